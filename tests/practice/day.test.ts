import { beforeAll, describe, expect, test } from 'vitest'
import { verifyLog } from '../../db/log/verify.ts'
import { allBags } from '../../db/read/bags.ts'
import { bagTally, coolers } from '../../db/read/coolers.ts'
import { kitBalances } from '../../db/read/kits.ts'
import { stationOf } from '../../db/read/station.ts'
import type { PlayedDesk } from '../../electron/desk/practice/day.ts'
import { practiceDay } from '../../electron/station/practice/plan.ts'
import { entryBodies, type KnownEntry } from '../../shared-types/entry.ts'
import { kitAccountKey } from '../../shared-types/kit.ts'
import { entriesOf, folderForFile, ofKind, play, reading } from './played.ts'

const wish = { seed: 7, animals: 120, desks: 2 }
const folder = folderForFile()
let desks: PlayedDesk[] = []
let entries: ReadonlyMap<string, KnownEntry[]> = new Map()

beforeAll(async () => {
  desks = await play(folder, wish)
  entries = new Map(desks.map(({ desk, log }) => [desk, entriesOf(log)]))
}, 120_000)

/** Kinds that no practice day makes, and why. */
const neverOnAPracticeDay = {
  'office.set-up': 'an office works over merged logs, and a desk has its own',
  'clock.accepted': 'nobody sets the clock of the laptop back',
  'desk.moved-out': 'the laptop lasts the day',
  'desk.taken-over': 'the laptop lasts the day',
  'contacts.passphrase-set': 'contacts that are invented need no second lock',
  'contacts.purged': 'results come weeks later',
  'handoff.corrected': 'what was signed was right',
  'receipt.counted': 'the laboratory counts on another day',
  'discrepancy.settled': 'only a merge finds any',
  'labels.resumed': 'sheets jam one at a time, and a ruined label is printed again by itself',
  'stock.described': 'the sheets that everybody sells will do',
  'stock.retired': 'the sheets that everybody sells will do',
  'slip.taken-back': 'nobody slips within the minute',
  'animal.struck-out': 'nobody slips within the minute',
  'animal.outcome-changed': 'nobody slips within the minute',
  'tissue.reopened': 'nobody slips within the minute',
  'kit.brought': 'each desk has kits of its own',
  'cooler.kept': 'no cooler stays over the night',
  'station.variance-explained': 'only the merged log of all desks has it',
  'station.closed': 'only the merged log of all desks is closed as one',
  'results.read': 'results come weeks later',
  'results.row-settled': 'results come weeks later',
  'results.rules-set': 'results come weeks later',
  'result.reported': 'results come weeks later',
  'result.followed-up': 'results come weeks later',
  'hunter.told': 'results come weeks later',
  'coverage.planned': 'the office plans the season',
  'outline.supplied': 'the office has the map',
}

describe('a practice day of 120 animals at two desks', () => {
  test('meets every kind of entry that a day can meet', () => {
    const met = new Set([...entries.values()].flat().map(({ kind }) => kind as string))
    const unmet = Object.keys(entryBodies).filter((kind) => !met.has(kind))
    expect(new Set(unmet)).toEqual(new Set(Object.keys(neverOnAPracticeDay)))
  })

  test('leaves logs that are whole, with tables as a rebuild makes them', () => {
    for (const { log } of desks) {
      const { whole, readTables, findings, notUnderstood } = reading(log, (open) => verifyLog(open))
      expect({ whole, readTables, findings, notUnderstood }).toEqual({
        whole: true,
        readTables: 'equal',
        findings: [],
        notUnderstood: 0,
      })
    }
  })

  test('is marked as practice for ever', () => {
    for (const { log } of desks) expect(reading(log, stationOf)?.practice).toBe(true)
  })

  test('has its ledger come out at zero, as a recount of the entries does', () => {
    for (const { desk, log } of desks) {
      const balances = reading(log, kitBalances)
      expect([...balances.values()].reduce((sum, count) => sum + count, 0)).toBe(0)
      expect(balances).toEqual(recounted(entries.get(desk) ?? []))
    }
  })

  test('has each bag in exactly one place: with the courier, or discarded', () => {
    for (const { desk, log } of desks) {
      const day = entries.get(desk) ?? []
      const given = ofKind(day, 'handoff.signed').flatMap(({ body }) =>
        body.manifest.coolers.flatMap(({ bags }) => bags.map(({ bag }) => bag)),
      )
      const sealed = new Set(ofKind(day, 'bag.sealed').map(({ body }) => body.bag))
      const bags = reading(log, allBags)
      expect(new Set(bags.map(({ bag }) => bag))).toEqual(sealed)
      expect(given.toSorted()).toEqual(
        bags.flatMap(({ bag, place }) => (place === 'handed-off' ? [bag] : [])).toSorted(),
      )
      expect(new Set(given).size).toBe(given.length)
      const elsewhere = bags.filter(({ place }) => place !== 'handed-off')
      expect(elsewhere.filter(({ place }) => place !== 'discarded')).toEqual([])
      const inCoolers = reading(log, (open) =>
        coolers(open).reduce((sum, { cooler }) => sum + bagTally(open, cooler), 0),
      )
      expect(inCoolers).toBe(given.length)
    }
  })

  test('closes over what differs only with a reason, and puts right what can be', () => {
    for (const { desk, faults } of practiceDay(wish)) {
      const [first] = ofKind(entries.get(desk) ?? [], 'day.closed')
      const unexplained = first?.body.items.filter(
        ({ expected, counted, reason }) => expected !== counted && reason === null,
      )
      expect(unexplained).toEqual([])
      expect(faults.length).toBeGreaterThan(1)
      expect(first?.body.second ?? first?.body.aloneBecause).not.toBe('')
    }
  })

  test('deals with every animal, some on one side only and some not at all', () => {
    const days = [...entries.values()].map((day) => ofKind(day, 'day.closed').at(-1)?.body.animals)
    const sum = (of: (each: NonNullable<(typeof days)[number]>) => number | undefined) =>
      days.reduce((all, each) => all + ((each && of(each)) ?? 0), 0)
    const [one, none] = [sum(({ outcomes }) => outcomes.one), sum(({ outcomes }) => outcomes.none)]
    const both = sum(({ outcomes }) => outcomes.both)
    const [left, recorded] = [sum((each) => each.left), sum((each) => each.recorded)]
    expect(both + one + none + left + recorded).toBe(120)
    for (const some of [both, one, left, recorded]) expect(some).toBeGreaterThan(0)
  })

  test('has one reading out of range at each desk, put right within half an hour', () => {
    for (const day of entries.values()) {
      const readings = ofKind(day, 'cooler.read')
      const place = readings.findIndex(({ body }) => body.excursion)
      expect(readings.filter(({ body }) => body.excursion).length).toBe(1)
      const after = readings
        .slice(place + 1)
        .find(({ body }) => body.cooler === readings[place]?.body.cooler)
      expect(after?.body.excursion).toBe(false)
      expect((after?.at.ms ?? 0) - (readings[place]?.at.ms ?? 0)).toBeLessThan(30 * 60_000)
    }
  })

  test('names nobody in its entries but the crew and the courier', () => {
    for (const day of entries.values()) {
      const text = JSON.stringify(day)
      expect(text).not.toMatch(/@example\.org|555-01/)
      expect(ofKind(day, 'animal.checked-in').some(({ body }) => body.contact !== null)).toBe(true)
    }
  })
})

/** Kits by account, counted from the entries one after another. */
function recounted(day: readonly KnownEntry[]): Map<string, number> {
  const accounts = new Map<string, number>()
  const move = (from: string, to: string, count: number) => {
    accounts.set(from, (accounts.get(from) ?? 0) - count)
    accounts.set(to, (accounts.get(to) ?? 0) + count)
  }
  for (const { kind, body } of day) {
    if (kind === 'kits.moved') move(kitAccountKey(body.from), kitAccountKey(body.to), body.count)
    if (kind === 'kit.opened') move(`hands:${body.sampler}`, 'used', 1)
    if (kind === 'kit.spoiled') move(kitAccountKey(body.from), 'spoiled', 1)
    if (kind === 'handoff.signed') move('used', 'sent', body.kits.length)
  }
  return accounts
}
