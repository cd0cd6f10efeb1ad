/** A weekend's stick with one of everything that people must settle. */
import { copyFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { connectionOf } from '../../db/connection.ts'
import { transact } from '../../db/log/append.ts'
import { createLog } from '../../db/log/create.ts'
import { openLog } from '../../db/log/open.ts'
import type { AnimalFacts } from '../../shared-types/animal.ts'
import { draft, type EntryBody, type EntryDraft } from '../../shared-types/entry.ts'
import { LocalDate } from '../../shared-types/local-date.ts'
import { granted } from '../../shared-types/result.ts'
import {
  animalNumber,
  bagNumber,
  coolerNumber,
  DeskId,
  kitNumber,
  personId,
} from '../../shared-types/sample-number.ts'
import { draftOf } from '../db/some-drafts.ts'
import { value } from '../db/temp-log.ts'
import { factsOf, settings } from '../support/station.ts'

const date = LocalDate.parse('2026-11-14')
/** Sat 14 Nov 2026, 08:00 in Denver. */
export const eight = Date.parse('2026-11-14T08:00:00-07:00')
const minutes = (count: number) => eight + count * 60_000

export const gap = DeskId.parse('26KRVA')
export const second = DeskId.parse('26KRVC')
export const quarry = DeskId.parse('26PQRE')
const copied = DeskId.parse('26KRVD')
const torn = DeskId.parse('26KRVF')
const replaced = DeskId.parse('26KRVH')

/** What a desk recorded, each with the minute of the day by its own clock. */
type Day = readonly (readonly [minute: number, ...facts: EntryDraft[]])[]

function setUp(desk: DeskId, name: string): EntryDraft[] {
  return [
    draft('station.set-up', {
      season: desk.slice(0, 2),
      station: desk.slice(2, 5),
      letter: desk.slice(5),
      name,
      zone: 'America/Denver',
      practice: false,
      settings,
    }),
    draft('person.added', {
      person: personId(desk, 1),
      name: `Lead of ${desk}`,
      role: 'lead',
      training: [],
    }),
    draft('day.opened', { date, kits: 20, blankLabels: 100, stockCounted: null }),
    draft('cooler.opened', {
      cooler: coolerNumber(desk, 1),
      name: `Cooler ${desk.slice(5)}`,
      keeping: 'chilled',
      capacity: 40,
    }),
  ]
}

function checkedIn(desk: DeskId, serial: number, facts: Partial<AnimalFacts>): EntryDraft {
  return draft('animal.checked-in', {
    animal: animalNumber(desk, serial),
    day: date,
    facts: factsOf(facts),
    contact: null,
    noSample: null,
  })
}

function amended(
  desk: DeskId,
  serial: number,
  facts: Partial<AnimalFacts>,
  reason: string,
): EntryDraft {
  return draft('animal.amended', {
    animal: animalNumber(desk, serial),
    facts: factsOf(facts),
    noSample: null,
    reason,
  })
}

function sealed(bag: ReturnType<typeof bagNumber>, desk: DeskId, serial: number): EntryDraft {
  return draft('bag.sealed', {
    bag,
    animal: animalNumber(desk, serial),
    kit: kitNumber(gap, 1),
    site: 'left',
    kept: 'fresh',
  })
}

function opened(desk: DeskId, serial: number): EntryDraft {
  return draft('kit.opened', {
    kit: kitNumber(gap, 1),
    animal: animalNumber(desk, serial),
    sampler: personId(desk, 1),
  })
}

/** A signed handoff of one bag, whatever else is in it. */
function signed(): EntryBody<'handoff.signed'> {
  const body = fc
    .sample(draftOf('handoff.signed'), { numRuns: 200, seed: 3 })
    .map((each) => each.body as EntryBody<'handoff.signed'>)
    .find(({ manifest }) => manifest.coolers.some(({ bags }) => bags.length > 0))
  if (!body) throw new Error('no manifest with a bag among them')
  const coolers = body.manifest.coolers
    .filter(({ bags }) => bags.length > 0)
    .slice(0, 1)
    .map((cooler) => ({ ...cooler, bags: cooler.bags.slice(0, 1) }))
  return { ...body, manifest: { ...body.manifest, coolers } }
}

const left = bagNumber(gap, 1, 'L')
const right = bagNumber(gap, 1, 'R')

const days = new Map<DeskId, { name: string; day: Day }>([
  [
    gap,
    {
      name: 'Cinder Gap',
      day: [
        [5, checkedIn(gap, 1, { tag: 'T100', hunter: 'H100' })],
        [6, checkedIn(gap, 2, { tag: 'T200', hunter: 'H200' })],
        [8, draft('kit.numbered', { kit: kitNumber(gap, 1), animal: animalNumber(gap, 1) })],
        [10, opened(gap, 1), sealed(left, gap, 1), sealed(right, gap, 1)],
        [12, draft('bag.placed', { bag: right, cooler: coolerNumber(gap, 1) })],
        [14, draft('handoff.signed', signed())],
        [30, amended(gap, 2, { tag: 'T200', hunter: 'H200', sex: 'female' }, 'a doe')],
        [
          60,
          draft('day.closed', {
            date,
            lead: personId(gap, 1),
            second: null,
            aloneBecause: '',
            items: [],
            animals: { checkedIn: 2, outcomes: { both: 0, one: 0, none: 0 }, left: 0, recorded: 0 },
          }),
        ],
        [
          70,
          amended(gap, 1, { tag: 'T100', hunter: 'H100', age: 'yearling' }, 'jaw looked at again'),
        ],
      ],
    },
  ],
  [
    second,
    {
      name: 'Cinder Gap',
      day: [
        [1, draft('bag.placed', { bag: right, cooler: coolerNumber(second, 1) })],
        [7, checkedIn(second, 1, { tag: 'T300', hunter: 'H300' })],
        [9, opened(second, 1), sealed(left, second, 1)],
        [20, draft('handoff.signed', signed())],
        [40, amended(gap, 2, { tag: 'T200', hunter: 'H200', sex: 'male' }, 'a buck')],
      ],
    },
  ],
  [
    quarry,
    {
      name: 'Pine Quarry',
      day: [
        [90, checkedIn(quarry, 1, { tag: 'T100', hunter: 'H100' })],
        [95, checkedIn(quarry, 2, { tag: 'T200', hunter: 'H900', species: 'elk' })],
      ],
    },
  ],
  [
    copied,
    { name: 'Cinder Gap', day: [[5, checkedIn(copied, 1, { tag: 'T400', hunter: 'H400' })]] },
  ],
  [
    torn,
    {
      name: 'Fallow Bridge',
      day: Array.from(
        { length: 90 },
        (_, at) => [at, checkedIn(torn, at + 1, { tag: `T5${at}`, hunter: `H5${at}` })] as const,
      ),
    },
  ],
])

function record(path: string, day: Day, by: DeskId): void {
  const log = value(openLog(path))
  for (const [minute, ...facts] of day)
    value(
      transact(log, { now: minutes(minute), by: personId(by, 1), acceptClock: true }, (tx) =>
        granted(tx.append(facts)),
      ),
    )
  log.close()
}

/** Writes the files of the stick into a folder and answers with their paths. */
export function disputedLogs(folder: string): string[] {
  const files: string[] = []
  for (const [desk, { name, day }] of days) {
    const path = join(folder, `${desk}.stationlog`)
    value(createLog(path, desk)).close()
    record(path, [[0, ...setUp(desk, name)], ...day], desk)
    files.push(path)
  }
  const [, , quarryFile = '', copiedFile = '', tornFile = ''] = files
  const fork = join(folder, 'copy-of-26KRVD.stationlog')
  copyFileSync(copiedFile, fork)
  record(
    copiedFile,
    [[50, draft('duty.changed', { person: personId(copied, 1), duty: 'break' })]],
    copied,
  )
  record(fork, [[55, draft('duty.changed', { person: personId(copied, 1), duty: 'off' })]], copied)
  spoil(quarryFile, 'UPDATE entry SET ms = ms + 1 WHERE seq = 4')
  spoil(tornFile, 'DELETE FROM entry WHERE seq BETWEEN 20 AND 24')
  truncateSync(tornFile, Math.floor(statSync(tornFile).size * 0.9))
  writeFileSync(join(folder, 'notes.stationlog'), 'milk, bread, bleach')
  return [...files, fork, replacedLog(folder)]
}

/** What a hand can do that knows no triggers. */
function spoil(path: string, sql: string): void {
  const log = value(openLog(path))
  connectionOf(log).exec(
    'DROP TRIGGER entry_is_never_changed; DROP TRIGGER entry_is_never_taken_out',
  )
  connectionOf(log).exec(sql)
  log.close()
}

/** A log whose fifth entry is not the one that the sixth was written after, and yet proves itself. */
function replacedLog(folder: string): string {
  const path = join(folder, `${replaced}.stationlog`)
  const other = join(folder, 'other')
  value(createLog(path, replaced)).close()
  record(path, [[0, ...setUp(replaced, 'Heron Ford')]], replaced)
  copyFileSync(path, other)
  const duty = (state: 'on' | 'off') =>
    draft('duty.changed', { person: personId(replaced, 1), duty: state })
  record(
    path,
    [
      [5, duty('on')],
      [6, duty('off')],
      [7, duty('on')],
    ],
    replaced,
  )
  record(
    other,
    [
      [5, duty('off')],
      [6, duty('on')],
    ],
    replaced,
  )
  spoil(
    path,
    `DELETE FROM entry WHERE seq = 5; ATTACH '${other}' AS other;
    INSERT INTO entry SELECT * FROM other.entry WHERE seq = 5`,
  )
  for (const part of ['', '-wal', '-shm']) rmSync(other + part, { force: true })
  return path
}
