import { copyFileSync, mkdirSync, readdirSync, rmSync } from 'node:fs'
import { basename, join } from 'node:path'
import fc from 'fast-check'
import { beforeAll, expect, test } from 'vitest'
import { transact } from '../../db/log/append.ts'
import { openLog } from '../../db/log/open.ts'
import { guessedGroups, mergeInThreads } from '../../db/merge/in-threads.ts'
import { mergeLogs } from '../../db/merge/merge.ts'
import { mergeFiles, stopSign } from '../../db/merge/merge-files.ts'
import { type MergeHand, type MergeHandData, MergeTasks } from '../../db/merge/merge-tasks.ts'
import { draft } from '../../shared-types/entry.ts'
import { granted } from '../../shared-types/result.ts'
import { bagNumber, coolerNumber, DeskId, personId } from '../../shared-types/sample-number.ts'
import { value } from '../db/temp-log.ts'
import { disputedLogs } from './disputed.ts'
import { contentOf, folderForAll, meet, playedLogs, sticks } from './histories.ts'

const folder = folderForAll()
let logs: string[]

beforeAll(async () => {
  logs = await playedLogs(folder, { desks: 3, animals: 15 })
}, 120_000)

/** The tasks of a thread, done in this one: what comes of them is the same, and sooner. */
function handHere(data: MergeHandData): MergeHand {
  const tasks = new MergeTasks(data)
  const ask = async (...asked: Parameters<MergeTasks['do']>) => tasks.do(...asked)
  return {
    ask: (task, progress = () => undefined) => ask(task, progress) as never,
    end: async () => tasks.end(),
  }
}

const watch = () => ({ progress: () => undefined, stop: stopSign() })
let runs = 0

test('however the files are grouped at first, parts made apart come to what one merge makes', async () => {
  await fc.assert(
    fc.asyncProperty(sticks(3), fc.nat({ max: 3 }), async (stick, width) => {
      runs += 1
      const at = join(folder, `run-${runs}`)
      mkdirSync(at)
      const files = stick.map(({ log, fate }, place) => {
        const path = join(at, `${place}.stationlog`)
        meet(logs[log] ?? '', fate, path)
        return path
      })
      const places = [...files.keys()]
      const guess = places.flatMap((place) =>
        place % (width + 1) === 0 ? [places.slice(place, place + width + 1)] : [],
      )
      const [one, parts] = [join(at, 'one.merged'), join(at, 'parts.merged')]
      const whole = value(mergeLogs({ out: one, files, office: null }))
      const order = { out: parts, files, office: null }
      const report = value(await mergeInThreads(order, guess, watch(), handHere))
      expect(contentOf(parts)).toEqual(contentOf(one))
      expect(report).toEqual(whole)
      expect(readdirSync(at).filter((name) => name.includes('.part'))).toEqual([])
      rmSync(at, { recursive: true })
    }),
    { numRuns: 120, endOnFailure: true },
  )
}, 600_000)

test('desks whose entries meet in a row are folded together, whatever was guessed', async () => {
  const at = join(folder, 'ties')
  mkdirSync(at)
  const files = disputedLogs(at)
  const out = join(at, 'parts.merged')
  const apart = files.map((_, place) => [place])
  value(await mergeInThreads({ out, files, office: null }, apart, watch(), handHere))
  value(mergeLogs({ out: join(at, 'one.merged'), files, office: null }))
  expect(contentOf(out)).toEqual(contentOf(join(at, 'one.merged')))
})

test('real threads come to the same, and leave nothing beside the merged log', async () => {
  const at = join(folder, 'threads')
  mkdirSync(at)
  const files = logs.map((log) => join(at, basename(log)))
  for (const [place, file] of files.entries()) copyFileSync(logs[place] ?? '', file)
  const out = join(at, 'out.merged')
  const apart = files.map((_, place) => [place])
  const report = value(await mergeInThreads({ out, files, office: null }, apart, watch()))
  expect(report).toEqual(value(mergeLogs({ out: join(at, 'one.merged'), files, office: null })))
  expect(contentOf(out)).toEqual(contentOf(join(at, 'one.merged')))
  expect(readdirSync(at).filter((name) => name.includes('.part'))).toEqual([])
}, 60_000)

test('a merge in threads that is stopped leaves no trace', async () => {
  const at = join(folder, 'stopped')
  mkdirSync(at)
  const stop = stopSign()
  const progress = () => Atomics.store(stop, 0, 1)
  const order = { out: join(at, 'out.merged'), files: logs, office: null }
  const apart = logs.map((_, place) => [place])
  const merged = await mergeInThreads(order, apart, { progress, stop }, handHere)
  expect(merged).toMatchObject({ ok: false, refusal: { code: 'stopped' } })
  expect(readdirSync(at)).toEqual([])
})

test('where a thread meets a fault of its own, the files are merged all the same', async () => {
  const out = join(folder, 'faulty.merged')
  const report = value(await mergeFiles({ out, files: logs, office: null }, watch()))
  expect(report.files.map(({ state }) => state)).toEqual(logs.map(() => 'whole'))
})

test('practice logs are left out of parts too, when one of the files is a real one', async () => {
  const at = join(folder, 'mixed')
  mkdirSync(at)
  const files = [...disputedLogs(at), ...logs]
  const order = { out: join(at, 'parts.merged'), files, office: null }
  const apart = files.map((_, place) => [place])
  const report = value(await mergeInThreads(order, apart, watch(), handHere))
  const one = value(mergeLogs({ ...order, out: join(at, 'one.merged') }))
  expect(report).toEqual(one)
  expect(contentOf(order.out)).toEqual(contentOf(join(at, 'one.merged')))
})

test('logs of one station are guessed to belong together by what they say of themselves', () => {
  expect(guessedGroups([...logs, join(folder, 'no-such-file')]).length).toBeGreaterThan(1)
})

test("a bag that another desk takes over ties the two desks' logs", async () => {
  const at = join(folder, 'taken-over')
  mkdirSync(at)
  const files = logs.slice(0, 2).map((log) => join(at, basename(log)))
  for (const [place, file] of files.entries()) copyFileSync(logs[place] ?? '', file)
  const [first = '', second = ''] = files
  const firstDesk = value(openLog(first))
  const theirs = firstDesk.desk
  firstDesk.close()
  const log = value(openLog(second))
  const bag = bagNumber(theirs, 1, 'L')
  const facts = [
    draft('bag.placed', { bag, cooler: coolerNumber(DeskId.parse(log.desk), 1) }),
    draft('person.signed-in', { person: personId(log.desk, 1) }),
  ]
  const now = Date.now()
  value(transact(log, { now, by: null, acceptClock: true }, (tx) => granted(tx.append(facts))))
  log.close()
  const order = { out: join(at, 'parts.merged'), files, office: null }
  value(await mergeInThreads(order, [[0], [1]], watch(), handHere))
  value(mergeLogs({ ...order, out: join(at, 'one.merged') }))
  expect(contentOf(order.out)).toEqual(contentOf(join(at, 'one.merged')))
})
