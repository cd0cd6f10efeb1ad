/** Lists for elsewhere: animals, samples, kits, coolers, entries, as CSV or JSON. No contact is in them. */
import { stringify } from 'csv-stringify/sync'
import type { ReadableLog } from '../../db/connection.ts'
import { entriesInOrder } from '../../db/log/read-entries.ts'
import { allAnimals } from '../../db/read/animals.ts'
import { allBags } from '../../db/read/bags.ts'
import { bagTally, coolers, lastReadingOf } from '../../db/read/coolers.ts'
import { allKits } from '../../db/read/kits.ts'
import type { ParsedInput } from '../../shared-types/desk-api.ts'
import type { HarvestPlace } from '../../shared-types/animal.ts'
import { granted } from '../../shared-types/result.ts'
import { localIso } from '../station/local-time.ts'
import type { QueryHandlers } from './call.ts'

type What = ParsedInput<'table'>['what']
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

function animalRows(log: ReadableLog, iso: Iso): Row[] {
  return allAnimals(log).map((each) => ({
    animal: each.animal,
    day: each.day,
    state: each.state,
    outcome: each.outcome,
    not_sampled_because: each.noSample,
    hunter: each.facts.hunter,
    tag: each.facts.tag,
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

function entryRows(log: ReadableLog): Row[] {
  return Array.from(entriesInOrder(log), ({ desk, seq, at, by, kind, v, body, prev, hash }) => ({
    desk,
    seq,
    ms: at.ms,
    n: at.n,
    wall: at.wall,
    by,
    kind,
    v,
    body: JSON.stringify(body),
    prev,
    hash,
  }))
}

function rowsOf(log: ReadableLog, what: What, zone: string): Row[] {
  const iso: Iso = (ms) => (ms === null ? null : localIso(ms, zone))
  switch (what) {
    case 'animals':
      return animalRows(log, iso)
    case 'samples':
      return sampleRows(log, iso)
    case 'kits':
      return kitRows(log, iso)
    case 'coolers':
      return coolerRows(log, iso)
    case 'entries':
      return entryRows(log)
  }
}

export const tableQueries = {
  table: ({ log, station }, { what, format }) => {
    const rows = rowsOf(log, what, station.zone)
    const text =
      format === 'json'
        ? `${JSON.stringify(rows, null, 2)}\n`
        : stringify(rows, { header: true, escape_formulas: true })
    return granted({ name: `${what}-${log.desk}.${format}`, text })
  },
} satisfies Partial<QueryHandlers>
