import { describe, expect, test } from 'vitest'
import { inTurn, type OrderView, waitingLine } from '../../electron/station/line-order.ts'
import { usualLineSettings } from '../../electron/station/line-settings.ts'
import { type FreeSampler, suggestNext } from '../../electron/station/next-animal.ts'
import { beliefIn, type Pace, paces } from '../../electron/station/service-time.ts'
import { airAt } from '../../electron/station/spoiling.ts'
import type { AnimalRecord } from '../../shared-types/animal.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { factsOf } from '../support/station.ts'
import { animal, date, minutes, morning, person } from './records.ts'

const view: OrderView = {
  settings: usualLineSettings,
  air: airAt(morning, 'America/Denver', 18),
  nowMs: morning + minutes(60),
  taken: [],
}
const usualPace = paces(usualLineSettings, [])('anyone')

function free(
  serial: number,
  name: string,
  training: PersonRecord['training'],
  changed: Partial<FreeSampler> = {},
): FreeSampler {
  const who = person('sampler', serial, { name, training })
  return { person: who, pace: usualPace, kits: 5, minutesLeft: null, ...changed }
}

function suggested(
  animals: AnimalRecord[],
  samplers: FreeSampler[],
  setAside: Parameters<typeof suggestNext>[2] = [],
) {
  const line = inTurn(waitingLine(animals, view), view.settings)
  return suggestNext(line, samplers, setAside, view).map(({ animal: number, sampler, why }) => ({
    animal: number,
    name: samplers.find((each) => each.person.person === sampler)?.person.name,
    why,
  }))
}

const deer = animal(1)
const elk = animal(2, { arrivedMs: morning + 1, facts: factsOf({ species: 'elk' }) })
const ines = free(2, 'Ines Tarr', ['deer'])
const bram = free(3, 'Bram Loss', ['deer', 'elk-and-moose'])

describe('who works what next', () => {
  test('training decides: the deer sampler takes the deer, so that the other can take the elk', () => {
    expect(suggested([deer, elk], [bram, ines])).toMatchObject([
      { animal: elk.animal, name: 'Bram Loss' },
      { animal: deer.animal, name: 'Ines Tarr' },
    ])
  })

  test('a skinned head goes to somebody trained to spare the hide', () => {
    const facts = factsOf({ head: { presented: 'head-only', faults: ['skinned'] } })
    const skinned = animal(3, { facts })
    const careful = free(4, 'Oona Reed', ['deer', 'skinned-heads'])
    expect(suggested([skinned], [ines, careful])[0]?.name).toBe('Oona Reed')
    expect(suggested([skinned], [ines])).toEqual([])
  })

  test('of two who could, the one with narrower training, and the sentence says so', () => {
    const [only] = suggested([deer], [bram, ines])
    expect(only?.name).toBe('Ines Tarr')
    expect(only?.why).toBe(
      'It has waited longest; Ines Tarr is free, which leaves wider training for other heads.',
    )
  })

  test('of two alike, the one who takes less time', () => {
    const slow: Pace = { ...usualPace, deer: beliefIn(14) }
    const [only] = suggested([deer], [free(5, 'Nils Moor', ['deer'], { pace: slow }), ines])
    expect(only?.name).toBe('Ines Tarr')
    expect(only?.why).toMatch(/takes about \d+ minutes, the least of those free/)
  })

  test('nobody without a kit, and nobody in the last minutes of a shift', () => {
    expect(suggested([deer], [free(2, 'Ines Tarr', ['deer'], { kits: 0 })])).toEqual([])
    expect(suggested([deer], [free(2, 'Ines Tarr', ['deer'], { minutesLeft: 3 })])).toEqual([])
    expect(suggested([deer], [free(2, 'Ines Tarr', ['deer'], { minutesLeft: 45 })])).toHaveLength(1)
  })

  test('not what the lead set aside: then the next in turn', () => {
    const second = animal(6, { arrivedMs: morning + 5 })
    const aside = [{ animal: deer.animal, sampler: ines.person.person }]
    expect(suggested([deer, second], [ines], aside)[0]?.animal).toBe(second.animal)
  })

  test('the more urgent is never left for the one that is quicker work', () => {
    const spoiling = animal(7, {
      arrivedMs: morning + 9,
      facts: factsOf({ species: 'elk', harvested: date('2026-11-12') }),
    })
    const [only] = suggested([deer, spoiling], [bram])
    expect(only?.animal).toBe(spoiling.animal)
    expect(only?.why).toMatch(
      /^Its tissue is spoiling, harvested about \d+ hours ago and the air is at 18 °C; Bram Loss/,
    )
  })

  test('every suggestion has one sentence', () => {
    for (const { why } of suggested([deer, elk, animal(8)], [ines, bram]))
      expect(why).toMatch(/^[A-Z][^.]*\.$/)
  })

  test('nothing where nobody is free or nobody waits', () => {
    expect(suggested([deer], [])).toEqual([])
    expect(suggested([], [ines])).toEqual([])
  })
})
