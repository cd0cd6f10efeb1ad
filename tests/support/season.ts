/**
 * A practice season: opening days really played at several desks, merged and taken up by an office, with
 * results of a laboratory whose answer to every bag is known beforehand.
 */
import { createHash } from 'node:crypto'
import { join } from 'node:path'
import type { WritableLog } from '../../db/connection.ts'
import { understood } from '../../db/fold/fold.ts'
import { transact } from '../../db/log/append.ts'
import { openLog } from '../../db/log/open.ts'
import { entriesInOrder } from '../../db/log/read-entries.ts'
import { mergeLogs } from '../../db/merge/merge.ts'
import { draft, type EntryBody, type KnownEntry } from '../../shared-types/entry.ts'
import type { ResultWord } from '../../shared-types/laboratory-result.ts'
import { LocalDate } from '../../shared-types/local-date.ts'
import { granted } from '../../shared-types/result.ts'
import type { AnimalNumber, BagNumber, PersonId } from '../../shared-types/sample-number.ts'
import { value } from '../db/temp-log.ts'
import { playedLogs } from '../merge/histories.ts'
import { leadPin, TestDesk } from './desk.ts'

export interface Season {
  /** The office, its lead signed in. */
  readonly desk: TestDesk
  /** Its log, opened beside it. */
  readonly log: WritableLog
  readonly lead: PersonId
}

/** Plays, merges and takes up; no result has come yet. */
export async function playSeason(
  folder: string,
  of: { desks: number; animals: number; seed?: number },
): Promise<Season> {
  const desk = new TestDesk()
  const files = await playedLogs(folder, of)
  value(mergeLogs({ out: join(desk.folder, 'season.stationlog'), files, office: null }))
  const { lead } = await desk.ask('office.setUp', {
    file: 'season.stationlog',
    season: '26',
    station: 'HEC',
    letter: 'A',
    name: 'Basin Office',
    zone: 'America/Denver',
    lead: { name: 'Ada Moor', pin: leadPin },
  })
  const log = value(openLog(join(desk.folder, 'season.stationlog')))
  desk.now = Math.max(desk.now, lastWall(log)) + 12 * 86_400_000
  return { desk, log, lead }
}

function lastWall(log: WritableLog): number {
  let last = 0
  for (const { at } of entriesInOrder(log)) last = Math.max(last, at.wall)
  return last
}

export function factsIn(log: WritableLog): KnownEntry[] {
  return [...entriesInOrder(log)].flatMap((entry) => understood(entry) ?? [])
}

/** The bags a courier took, with the animal each is of. */
export function bagsSent(facts: readonly KnownEntry[]): { bag: BagNumber; animal: AnimalNumber }[] {
  const animals = new Map<BagNumber, AnimalNumber>()
  for (const { kind, body } of facts) {
    if (kind === 'bag.sealed') animals.set(body.bag, body.animal)
    if (kind === 'bag.discarded') animals.delete(body.bag)
  }
  return [...animals].map(([bag, animal]) => ({ bag, animal }))
}

/** What the laboratory will say: from the bag's number alone, so that anyone can say it again. */
export function answerOf(bag: BagNumber): ResultWord {
  const [draw = 0] = createHash('sha256').update(bag).digest()
  if (draw < 8) return 'detected'
  if (draw < 14) return 'presumptive'
  if (draw < 30) return 'unsuitable'
  return draw < 40 ? 'pending' : 'not-detected'
}

/** The laboratory's answers come in, most a few days after the courier left. */
export function reportAll({ desk, log, lead }: Season): void {
  const bags = bagsSent(factsIn(log)).filter((_, at) => at % 10 !== 0)
  const tested = LocalDate.parse('2026-11-24')
  const body = (
    { bag, animal }: (typeof bags)[number],
    at: number,
  ): EntryBody<'result.reported'> => ({
    bag,
    animal,
    word: answerOf(bag),
    method: 'ELISA',
    tested,
    laboratory: 'Vannet Valley Animal Laboratory (invented)',
    file: 'f'.repeat(64),
    line: at + 2,
  })
  const reported = transact(log, { now: desk.now, by: lead }, (tx) =>
    granted(tx.append(bags.map((each, at) => draft('result.reported', body(each, at))))),
  )
  value(reported)
}
