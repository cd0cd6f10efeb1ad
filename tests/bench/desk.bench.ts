/** The desk with a long day behind it: a command, the line, a rebuild. */
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { connectionOf, type WritableLog } from '../../db/connection.ts'
import { openLog } from '../../db/log/open.ts'
import { countEntries } from '../../db/log/read-entries.ts'
import { rebuildReadTables } from '../../db/log/rebuild.ts'
import { DeskId, type PersonId } from '../../shared-types/sample-number.ts'
import { checkIn, factsOf, openStation, type TestDesk } from '../support/desk.ts'
import { fillWithFinished } from './long-log.ts'
import { alone, type Figure, ms, sideBySide } from './measure.ts'

/** The desk's own log, opened once more beside it. */
async function besideLog(desk: TestDesk): Promise<WritableLog> {
  const { open } = await desk.ask('shelf.look', {})
  const log = openLog(join(desk.folder, open ?? ''))
  if (!log.ok) throw new Error(log.refusal.say)
  return log.value
}

/** A desk that works in a log in which so many animals are finished already. */
export async function deskWith(
  animals: number,
): Promise<{ desk: TestDesk; log: WritableLog; sampler: PersonId }> {
  const { desk, crew } = await openStation()
  const log = await besideLog(desk)
  const letters = ['C', 'D', 'E', 'F']
  for (const letter of letters)
    fillWithFinished(log, {
      desk: DeskId.parse(`26KRV${letter}`),
      animals: animals / letters.length,
      sampler: crew.sampler,
      now: desk.now,
    })
  return { desk, log, sampler: crew.sampler }
}

/** A table with one index and the same durability as the log, and a row about as long as an entry. */
function bareTable(folder: string): (run: number) => void {
  const bare = new Database(join(folder, 'bare.sqlite'))
  bare.pragma('journal_mode = WAL')
  bare.pragma('synchronous = FULL')
  bare.exec(
    'CREATE TABLE row (id INTEGER PRIMARY KEY, body TEXT); CREATE INDEX row_body ON row (body)',
  )
  const insert = bare.prepare('INSERT INTO row (body) VALUES (?)')
  const one = bare.transaction((body: string) => insert.run(body))
  return (run) => one.immediate(`${run} ${'x'.repeat(700)}`)
}

async function commandFigure(desk: TestDesk): Promise<Figure> {
  const bare = bareTable(desk.folder)
  const command = () =>
    desk.desk.call(desk.session, 'animal.checkIn', { facts: factsOf(), contact: null })
  const { ours, baseline } = await sideBySide(1000, command, bare)
  const ratio = ours.p50 / baseline.p50
  return {
    what: 'acknowledged check-in, 10,000 animals in the log, against a bare one-row transaction at the same durability (p50)',
    figure: `${ratio.toFixed(2)}x (${ms(ours.p50)} against ${ms(baseline.p50)})`,
    target: 'at most 3x',
    met: ratio <= 3,
  }
}

async function lineFigure(desk: TestDesk): Promise<Figure> {
  const { totals } = await desk.ask('line', {})
  for (let waiting = totals.waiting; waiting < 500; waiting += 1) await checkIn(desk)
  for (const { animal } of (await desk.ask('line', {})).waiting.slice(500))
    await desk.ask('animal.leave', { animal, reason: 'for the measure' })
  const query = () => desk.desk.call(desk.session, 'line', {})
  await alone(20, query)
  const { p50, p95 } = await alone(200, query)
  return {
    what: 'line query, 500 waiting, 10,000 more animals in the log from ten days (p95)',
    figure: `${ms(p95)} (p50 ${ms(p50)})`,
    target: 'under 16 ms',
    met: p95 < 16,
  }
}

async function rebuildFigure(): Promise<Figure> {
  const { desk, log } = await deskWith(20_000)
  const connection = connectionOf(log)
  connection.exec('CREATE TEMP TABLE copy AS SELECT * FROM entry LIMIT 0')
  const copy = await alone(3, () => {
    connection.exec('DELETE FROM temp.copy; INSERT INTO temp.copy SELECT * FROM entry')
  })
  const rebuild = await alone(3, () => rebuildReadTables(log))
  const entries = countEntries(log)
  log.close()
  await desk.end()
  return {
    what: `rebuild of a log of ${entries.toLocaleString('en')} entries against a plain copy of its entries (p50)`,
    figure: `${(rebuild.p50 / copy.p50).toFixed(1)}x (${ms(rebuild.p50)} against ${ms(copy.p50)})`,
    target: 'reported',
    met: null,
  }
}

export async function deskFigures(): Promise<Figure[]> {
  const { desk, log } = await deskWith(10_000)
  log.close()
  const figures = [await commandFigure(desk), await lineFigure(desk)]
  await desk.end()
  return [...figures, await rebuildFigure()]
}
