import { describe, expect, test } from 'vitest'
import { causesBetween, type Evidence, withCauses } from '../../electron/station/likely-cause.ts'
import type { CountItem } from '../../shared-types/close.ts'
import { countItemKey } from '../../shared-types/close.ts'
import {
  animalNumber,
  bagNumber,
  coolerNumber,
  kitNumber,
  personId,
} from '../../shared-types/sample-number.ts'
import type { CloseItem } from '../../shared-types/views/close.ts'
import { desk } from './records.ts'

const [ines, bo] = [personId(desk, 2), personId(desk, 3)]
const [north, south] = [coolerNumber(desk, 1), coolerNumber(desk, 2)]
const kit = kitNumber(desk, 7)
const bag = bagNumber(desk, 7, 'L')

const quiet: Evidence = {
  hands: [
    { person: ines, name: 'Ines', duty: 'on', dutySince: '06:00', kits: 5, lastHanded: '09:10' },
    { person: bo, name: 'Bo', duty: 'on', dutySince: '06:00', kits: 5, lastHanded: '09:20' },
  ],
  openedForAnother: [],
  voidedAsSpoiled: [],
  reprinted: [],
  bench: [],
  coolers: [
    { cooler: north, name: 'North', state: 'open' },
    { cooler: south, name: 'South', state: 'sealed' },
  ],
  coolerOf: () => null,
  withSampler: [],
  twice: [],
}

function item(of: CountItem, off: number, changed: Partial<CloseItem> = {}): CloseItem {
  return {
    key: countItemKey(of),
    item: of,
    words: of.of,
    counted: 10 + off,
    expected: 10,
    variance: off,
    scanned: null,
    explained: null,
    tries: [],
    causes: [],
    ...changed,
  }
}

const hands = (person: typeof ines) => ({ of: 'kits-in-hand', person }) as const
const bags = (cooler: typeof north) => ({ of: 'bags', cooler }) as const
const first = (items: CloseItem[], evidence: Partial<Evidence>) =>
  withCauses(items, { ...quiet, ...evidence })[0]?.causes[0]

describe('the likely cause of a variance', () => {
  test('is never sought where the count agrees, and none is made up where the log shows nothing', () => {
    expect(first([item({ of: 'kits-in-stock' }, 0)], {})).toBeUndefined()
    expect(first([item({ of: 'kits-in-stock' }, -2)], {})).toBeUndefined()
  })

  test('of kits short in the hands of somebody gone home: assigned and never returned', () => {
    const gone = { ...quiet.hands[0], duty: 'off', dutySince: '14:00' } as Evidence['hands'][number]
    const cause = first([item(hands(ines), -10, { counted: 0 })], { hands: [gone] })
    expect(cause).toMatchObject({ code: 'kit-not-returned', about: ines, evidence: 90 })
    expect(cause?.say).toContain('went off duty at 14:00')
    expect(cause?.settle?.input).toMatchObject({ reason: 'not-given-back' })
  })

  test('of one kit over here and one short there: opened from another’s hands', () => {
    const openedForAnother = [
      { kit, animal: animalNumber(desk, 1), sampler: ines, before: bo, at: '11:00' },
    ]
    const items = [item(hands(ines), 1), item(hands(bo), -1)]
    const causes = withCauses(items, { ...quiet, openedForAnother }).map(
      ({ causes: [best] }) => best,
    )
    for (const cause of causes)
      expect(cause).toMatchObject({ code: 'kit-from-other-hands', about: kit, evidence: 92 })
  })

  test('of a kit short in stock whose labels are all void: spoiled and not recorded', () => {
    const cause = first([item({ of: 'kits-in-stock' }, -1)], {
      voidedAsSpoiled: [{ kit, at: '10:00' }],
    })
    expect(cause).toMatchObject({
      code: 'kit-spoiled-unrecorded',
      settle: { command: 'kit.spoil' },
    })
  })

  test('of a label over: given up as lost, printed twice, and turned up; a torn one is no such thing', () => {
    const copy = { number: bag, copy: 1, at: '10:30' }
    const over = [item({ of: 'unused-kit-labels' }, 1)]
    expect(first(over, { reprinted: [{ ...copy, reason: 'lost' }] })).toMatchObject({
      code: 'label-printed-twice',
      about: bag,
    })
    expect(first(over, { reprinted: [{ ...copy, reason: 'jammed' }] })).toBeUndefined()
  })

  test('of a cooler over by a bag of the bench: scanned into no cooler, placed with one key', () => {
    const bench = [{ bag, at: '12:00' }]
    expect(first([item(bags(north), 1)], { bench })).toMatchObject({
      code: 'bag-in-no-cooler',
      about: bag,
      settle: { command: 'bag.place', input: { bag, cooler: north } },
    })
    // Into a sealed cooler nothing is put by a key: its seal is broken first.
    expect(first([item(bags(south), 1)], { bench })?.settle).toBeNull()
  })

  test('of two coolers off by the same bag: it lies in the other one, named by scanning', () => {
    const items = [
      item(bags(north), -1, { scanned: { missing: [bag], extra: [] } }),
      item(bags(south), 1, { scanned: { missing: [], extra: [bag] } }),
    ]
    const named = withCauses(items, { ...quiet, coolerOf: () => north }).map(
      ({ causes: [best] }) => best,
    )
    for (const cause of named)
      expect(cause).toMatchObject({ code: 'bag-in-other-cooler', about: bag, evidence: 98 })
  })

  test('is ranked by what bears it out', () => {
    const openedForAnother = [
      { kit, animal: animalNumber(desk, 1), sampler: ines, before: bo, at: '11:00' },
    ]
    const items = [item(hands(ines), 1), item(hands(bo), -1)]
    const [causes = []] = withCauses(items, { ...quiet, openedForAnother }).map(
      (each) => each.causes,
    )
    expect(causes.map(({ code }) => code)).toEqual(['kit-from-other-hands', 'kits-moved-unsaid'])
    const weights = causes.map(({ evidence }) => evidence)
    expect(weights).toEqual(weights.toSorted((a, b) => b - a))
  })
})

test('an animal left with a sampler is named with whom, since when and how far it got', () => {
  const animal = animalNumber(desk, 4)
  const withSampler = [
    { animal, name: 'Ines', duty: 'off', since: '16:10', bags: 2, openSites: 0 } as const,
  ]
  const [cause] = causesBetween([], { ...quiet, withSampler })
  expect(cause).toMatchObject({ code: 'animal-with-sampler', about: animal, evidence: 90 })
  expect(cause?.say).toContain('Ines, who took it at 16:10 and sealed 2 bags of it')
  expect(cause?.settle).toEqual({ command: 'animal.finish', input: { animal } })
  // With a side still open there is nothing to finish yet.
  const open = withSampler.map((each) => ({ ...each, bags: 1, openSites: 1 }))
  const [other] = causesBetween([], { ...quiet, withSampler: open })
  expect(other?.settle).toBeNull()
  expect(other?.next).toContain('1 of its tissues is neither bagged nor said to be missing')
})
