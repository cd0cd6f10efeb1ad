import { describe, expect, test } from 'vitest'
import {
  decideAssign,
  decideLeave,
  decidePutBack,
  isOnTheLine,
  orderLine,
  whoCanWork,
} from '../../electron/station/line.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { factsOf } from '../support/station.ts'
import {
  animal,
  code,
  crew,
  inHand,
  lead,
  minutes,
  morning,
  person,
  refusal,
  sampler,
  written,
} from './records.ts'

test('first come is first worked, by the numbers given out, whatever the clock did meanwhile', () => {
  const arrived = [9, 10, 11].map((serial) =>
    animal(serial, { arrivedMs: morning - minutes(serial) }),
  )
  expect(arrived.toReversed().toSorted(orderLine)).toEqual(arrived)
})

describe('a head can be worked', () => {
  const names = (people: PersonRecord[]) =>
    whoCanWork(people.filter(isOnTheLine), animal()).map(({ name }) => name)

  test('by samplers and leads on duty who are trained for it', () => {
    expect(names(crew)).toEqual(['Orla Vance', 'Ines Tarr'])
  })

  test('by nobody on a break, off duty, gone, or untrained for it', () => {
    const others = [
      person('sampler', 4, { duty: 'break' }),
      person('sampler', 5, { duty: 'off' }),
      person('sampler', 6, { active: false }),
      person('sampler', 7, { training: ['elk-and-moose'] }),
    ]
    expect(names(others)).toEqual([])
  })
})

describe('an animal is assigned', () => {
  const assign = (view: Partial<Parameters<typeof decideAssign>[0]>) =>
    decideAssign({ animal: animal(), sampler, by: lead, ...view })

  test('by a lead to any sampler, and by a sampler to themselves', () => {
    for (const by of [lead, sampler])
      expect(written(assign({ by }))[0]).toMatchObject({
        kind: 'animal.assigned',
        body: { sampler: sampler.person },
      })
  })

  test('by a sampler to nobody else', () => {
    const other = person('sampler', 5)
    expect(code(assign({ by: other }))).toBe('only-for-yourself')
  })

  test('again to another sampler, while it is in hand', () => {
    const other = person('sampler', 5)
    expect(assign({ animal: inHand(), sampler: other }).ok).toBe(true)
    expect(code(assign({ animal: inHand() }))).toBe('already-assigned')
  })

  test.each(['finished', 'left', 'recorded'] as const)('but not once it is %s', (state) => {
    expect(code(assign({ animal: animal(1, { state }) }))).toBe('animal-not-in-line')
  })

  test('to someone on duty only, and the refusal says which it is', () => {
    const resting = refusal(assign({ sampler: person('sampler', 2, { duty: 'break' }) }))
    expect(resting).toMatchObject({ code: 'not-on-duty', say: 'Ines Tarr is on a break.' })
    const home = refusal(assign({ sampler: person('sampler', 2, { duty: 'off' }) }))
    expect(home.say).toBe('Ines Tarr is off duty.')
  })

  test('to someone who takes samples and is trained for this head', () => {
    expect(code(assign({ sampler: person('volunteer', 3) }))).toBe('not-a-sampler')
    const facts = factsOf({ head: { presented: 'carcass', faults: ['skinned'] } })
    const lacked = refusal(assign({ animal: animal(1, { facts }) }))
    expect(lacked.code).toBe('not-trained')
    expect(lacked.say).toBe('Ines Tarr is not trained for skinned heads.')
  })
})

describe('an animal goes back in the line', () => {
  test('from a sampler, or when its hunter who left comes back', () => {
    for (const each of [inHand(), animal(1, { state: 'left' })])
      expect(written(decidePutBack(each, 0, 'blade broke'))[0]?.kind).toBe('animal.put-back')
  })

  test('but not from where it is waiting, finished or only recorded', () => {
    for (const state of ['waiting', 'finished', 'recorded'] as const)
      expect(code(decidePutBack(animal(1, { state }), 0, 'blade broke'))).toBe('animal-not-in-hand')
  })

  test('and not with a bag already sealed', () => {
    expect(refusal(decidePutBack(inHand(), 1, 'blade broke')).say).toBe(
      '1 of its bags is already sealed.',
    )
    expect(refusal(decidePutBack(inHand(), 2, 'blade broke')).say).toContain('2 of its bags are')
  })
})

describe('a hunter leaves', () => {
  test('with an animal that waits or is in hand, and no bag is sealed', () => {
    for (const each of [animal(), inHand()])
      expect(written(decideLeave(each, 0, 'had to drive home'))[0]?.kind).toBe('animal.left')
    expect(code(decideLeave(inHand(), 1, 'had to drive home'))).toBe('bags-already-sealed')
  })

  test('but not after the animal is finished', () => {
    expect(code(decideLeave(animal(1, { state: 'finished' }), 0, 'gone'))).toBe(
      'animal-not-in-line',
    )
  })
})
