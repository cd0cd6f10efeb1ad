/**
 * Lists for elsewhere: animals, samples, results, kits, coolers, entries, as CSV or JSON. No contact is in
 * them, and hunter and tag numbers only where they are asked for.
 */
import { stringify } from 'csv-stringify/sync'
import type { ReadableLog } from '../../db/connection.ts'
import { entriesInOrder } from '../../db/log/read-entries.ts'
import { allAnimals } from '../../db/read/animals.ts'
import { allBags } from '../../db/read/bags.ts'
import { bagTally, coolers, lastReadingOf } from '../../db/read/coolers.ts'
import { allResults } from '../../db/read/results.ts'
import { allKits } from '../../db/read/kits.ts'
import { duplicates } from '../../db/read/duplicates.ts'
import type { ParsedInput } from '../../shared-types/desk-api.ts'
import type { HarvestPlace } from '../../shared-types/animal.ts'
import type { Entry } from '../../shared-types/entry.ts'
import { granted } from '../../shared-types/result.ts'
import { localIso } from '../station/local-time.ts'
import type { QueryHandlers } from './call.ts'

type Wish = Omit<ParsedInput<'table'>, 'format'>
type Cell = string | number | null
type Row = Record<string, Cell>
type Iso = (ms: number | null) => string | null

function placeCells(place: HarvestPlace): Row {
  return {
    unit: place.by === 'not-known' ? '' : place.unit,
    place: place.by === 'unit' ? place.place : '',
    latitude: place.by === 'coordinates' ? place.latitude : null,
    longitude: place.by === 'coordinates' ? place.longitude : null,
  }
}

function animalRows(log: ReadableLog, iso: Iso, hunters: boolean): Row[] {
  const again = duplicates(log)
  return allAnimals(log).map((each) => ({
    animal: each.animal,
    same_animal_as: again.get(each.animal) ?? null,
    day: each.day,
    state: each.state,
    outcome: each.outcome,
    not_sampled_because: each.noSample,
    ...(hunters ? { hunter: each.facts.hunter, tag: each.facts.tag } : {}),
    species: each.facts.species,
    sex: each.facts.sex,
    age: each.facts.age,
    harvested: each.facts.harvested,
    ...placeCells(each.facts.place),
    presented: each.facts.head.presented,
    head_faults: each.facts.head.faults.join(' '),
    consent: each.facts.consent,
    programme: each.facts.programme,
    arrived_at: iso(each.arrivedMs),
    assigned_at: iso(each.assignedMs),
    finished_at: iso(each.finishedMs),
    sampler: each.sampler,
  }))
}

function sampleRows(log: ReadableLog, iso: Iso): Row[] {
  return allBags(log).map((bag) => ({
    bag: bag.bag,
    animal: bag.animal,
    kit: bag.kit,
    species: bag.species,
    site: bag.site,
    kept: bag.kept,
    check: bag.check,
    sealed_at: iso(bag.sealedMs),
    place: bag.place,
    cooler: bag.cooler,
  }))
}

function resultRows(log: ReadableLog, iso: Iso): Row[] {
  return allResults(log).map(({ ms, ...each }) => ({ ...each, reported_at: iso(ms) }))
}

function kitRows(log: ReadableLog, iso: Iso): Row[] {
  return allKits(log).map((kit) => ({
    kit: kit.kit,
    state: kit.state,
    animal: kit.animal,
    sampler: kit.sampler,
    numbered_at: iso(kit.numberedMs),
    opened_at: iso(kit.openedMs),
  }))
}

function coolerRows(log: ReadableLog, iso: Iso): Row[] {
  return coolers(log).map((cooler) => {
    const reading = lastReadingOf(log, cooler.cooler)
    return {
      cooler: cooler.cooler,
      name: cooler.name,
      keeping: cooler.keeping,
      state: cooler.state,
      seal: cooler.seal,
      bags: bagTally(log, cooler.cooler),
      capacity: cooler.capacity,
      last_celsius: reading?.celsius ?? null,
      last_read_at: iso(reading?.ms ?? null),
      handoff: cooler.handoff,
    }
  })
}

/** An entry's body as text; where hunters are left out, their numbers are blank and the rest is whole. */
function bodyText(body: Entry['body'], hunters: boolean): string {
  if (hunters || !body.facts) return JSON.stringify(body)
  return JSON.stringify({ ...body, facts: { ...Object(body.facts), hunter: '', tag: '' } })
}

function entryRows(log: ReadableLog, hunters: boolean): Row[] {
  return Array.from(entriesInOrder(log), ({ desk, seq, at, by, kind, v, body, prev, hash }) => ({
    desk,
    seq,
    ms: at.ms,
    n: at.n,
    wall: at.wall,
    by,
    kind,
    v,
    body: bodyText(body, hunters),
    prev,
    hash,
  }))
}

function rowsOf(log: ReadableLog, { what, hunters }: Wish, zone: string): Row[] {
  const iso: Iso = (ms) => (ms === null ? null : localIso(ms, zone))
  switch (what) {
    case 'animals':
      return animalRows(log, iso, hunters)
    case 'samples':
      return sampleRows(log, iso)
    case 'results':
      return resultRows(log, iso)
    case 'kits':
      return kitRows(log, iso)
    case 'coolers':
      return coolerRows(log, iso)
    case 'entries':
      return entryRows(log, hunters)
  }
}

export const tableQueries = {
  table: ({ log, station }, { format, ...wish }) => {
    const { what } = wish
    const rows = rowsOf(log, wish, station.zone)
    const text =
      format === 'json'
        ? `${JSON.stringify(rows, null, 2)}\n`
        : stringify(rows, { header: true, escape_formulas: true })
    return granted({ name: `${what}-${log.desk}.${format}`, text })
  },
} satisfies Partial<QueryHandlers>
