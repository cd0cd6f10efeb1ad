/** Results in: a laboratory's file of twenty thousand rows, as CSV and as a workbook. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { parse } from 'csv-parse/sync'
import { openLog } from '../../db/log/open.ts'
import { bagNumber, DeskId } from '../../shared-types/sample-number.ts'
import { bring, laboratory, plainFile, plainReading, testedOn } from '../support/delivered.ts'
import { openStation } from '../support/desk.ts'
import { workbook } from '../support/workbook.ts'
import { fillWithFinished } from './long-log.ts'
import { type Figure, ms } from './measure.ts'

const animals = 9999
const elsewhere = [DeskId.parse('26KRVC'), DeskId.parse('26KRVD')] as const
const rows = 20_000

/** Every bag of a season's log, the first twenty thousand of them. */
function sent() {
  return elsewhere
    .flatMap((desk) =>
      Array.from({ length: animals }, (_, at) => [
        bagNumber(desk, at + 1, 'L'),
        bagNumber(desk, at + 1, 'R'),
      ]).flat(),
    )
    .slice(0, rows)
}

async function seasonLog() {
  const { desk, crew } = await openStation()
  const log = openLog(desk.file)
  if (!log.ok) throw new Error(log.refusal.say)
  for (const each of elsewhere)
    fillWithFinished(log.value, { desk: each, animals, sampler: crew.sampler, now: desk.now })
  log.value.close()
  // Given to a courier: folding a manifest of all these bags is not what is measured here.
  const database = new Database(desk.file)
  database.exec("UPDATE bag SET place = 'handed-off', cooler = NULL")
  database.close()
  desk.wait(20 * 24 * 60)
  return desk
}

/** The floor: the same file cut by the same library, its rows put into a bare table of SQLite. */
function baseline(file: string): number {
  const folder = mkdtempSync(join(tmpdir(), 'duskline-rows-'))
  const database = new Database(join(folder, 'rows.db'))
  database.pragma('journal_mode = WAL')
  database.pragma('synchronous = FULL')
  database.exec('CREATE TABLE row (number TEXT PRIMARY KEY, said TEXT, method TEXT, tested TEXT)')
  const insert = database.prepare('INSERT INTO row VALUES (?, ?, ?, ?)')
  const start = performance.now()
  const cut = parse(file, { from_line: 2 }) as string[][]
  for (let at = 0; at < cut.length; at += 1000)
    database.transaction(() => {
      for (const row of cut.slice(at, at + 1000)) insert.run(row)
    })()
  const took = performance.now() - start
  database.close()
  rmSync(folder, { recursive: true, force: true })
  return took
}

export async function resultFigures(): Promise<Figure[]> {
  const desk = await seasonLog()
  const bags = sent()
  const file = plainFile(bags.map((bag) => [bag, 'Not detected'] as const))
  const floor = baseline(file)
  const told: number[] = []
  const stop = desk.desk.watch((topics) => {
    if (topics.includes('results')) told.push(performance.now())
  })
  const start = performance.now()
  const brought = await bring(desk, file)
  const done = await desk.ask('results.import', { brought, laboratory, reading: plainReading() })
  const took = performance.now() - start
  stop()
  const steps = told.map((at, place) => at - (told[place - 1] ?? start))
  const book = workbook({
    Results: [
      ['Sample', 'Result', 'Method', 'Tested'],
      ...bags.map((bag) => [bag, 'Not detected', 'IHC', { day: testedOn }]),
    ],
  })
  const table = { is: 'workbook', sheet: 'Results' } as const
  const reading = plainReading({ table })
  const bookStart = performance.now()
  const broughtBook = await bring(desk, book, 'results.xlsx')
  const seen = await desk.ask('results.preview', { brought: broughtBook, laboratory, reading })
  const bookTook = performance.now() - bookStart
  await desk.end()
  return [
    {
      what: `reading in ${done.taken.toLocaleString('en')} results of a CSV file, each an entry of its own`,
      figure: `${ms(took)}, ${(took / floor).toFixed(1)} × a bare table's ${ms(floor)}; windows served every ${ms(Math.max(...steps))} at the latest`,
      target: 'under 3 s',
      met: done.taken === rows && took < 3000,
    },
    {
      what: `cutting and checking a workbook of ${rows.toLocaleString('en')} rows`,
      figure: ms(bookTook),
      target: 'under 3 s',
      met: seen.good[0]?.rows === rows && bookTook < 3000,
    },
  ]
}
