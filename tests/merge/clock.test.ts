/**
 * Order in a merged log, by the hybrid logical clock of Kulkarni, Demirbas, Madappa, Avva, Leone,
 * "Logical Physical Clocks", OPODIS 2014: what follows from a fact sorts after it, whatever the wall
 * clocks read (there, theorem 1).
 */
import { rmSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { WritableLog } from '../../db/connection.ts'
import { transact } from '../../db/log/append.ts'
import { createLog } from '../../db/log/create.ts'
import { openLog } from '../../db/log/open.ts'
import { entriesInOrder } from '../../db/log/read-entries.ts'
import { mergeLogs } from '../../db/merge/merge.ts'
import { takeUpLog } from '../../db/merge/take-up.ts'
import { draft } from '../../shared-types/entry.ts'
import { granted } from '../../shared-types/result.ts'
import { DeskId, personId } from '../../shared-types/sample-number.ts'
import { morning, tempFolder, value } from '../db/temp-log.ts'
import { settings } from '../support/station.ts'

const deskA = DeskId.parse('26KRVA')
const deskC = DeskId.parse('26KRVC')
const office = DeskId.parse('26HECA')
const person = personId(deskA, 1)

/** One fact at each reading of the laptop's clock, in the order in which they were done. */
function workAt(log: WritableLog, walls: readonly number[]): void {
  for (const now of walls)
    value(
      transact(log, { now, by: person, acceptClock: true }, (tx) =>
        granted(tx.append([draft('duty.changed', { person, duty: 'on' })])),
      ),
    )
}

function logAt(folder: string, desk: DeskId, walls: readonly number[]): string {
  const path = join(folder, `${desk}.stationlog`)
  const log = value(createLog(path, desk))
  workAt(log, walls)
  log.close()
  return path
}

function orderIn(path: string): { desk: DeskId; seq: number }[] {
  const log = value(openLog(path))
  const order = [...entriesInOrder(log)].map(({ desk, seq }) => ({ desk, seq }))
  log.close()
  return order
}

const hour = 3_600_000
const readings = fc.array(fc.integer({ min: morning - 48 * hour, max: morning + 48 * hour }), {
  minLength: 1,
  maxLength: 30,
})

test('a desk whose clock jumps about reorders neither its own facts nor those of another desk', () => {
  const folder = tempFolder()
  let run = 0
  fc.assert(
    fc.property(readings, readings, (wild, steady) => {
      run += 1
      const at = join(folder, String(run))
      const files = [
        logAt(
          folder,
          deskA,
          steady.toSorted((a, b) => a - b),
        ),
        logAt(folder, deskC, wild),
      ]
      value(mergeLogs({ out: at, files, office: null }))
      const order = orderIn(at)
      for (const [desk, walls] of [
        [deskA, steady],
        [deskC, wild],
      ] as const)
        expect(order.filter((each) => each.desk === desk).map(({ seq }) => seq)).toEqual(
          walls.map((_, place) => place + 1),
        )
      for (const file of files) rmSync(file)
    }),
    { numRuns: 60 },
  )
}, 60_000)

test('what an office does sorts after all it had merged, though its clock is a day behind', () => {
  const folder = tempFolder()
  const path = join(folder, 'A')
  const begun = value(createLog(path, deskA))
  value(
    transact(begun, { now: morning, by: null }, (tx) =>
      granted(
        tx.append([
          draft('station.set-up', {
            season: '26',
            station: 'KRV',
            letter: 'A',
            name: 'Cinder Gap',
            zone: 'America/Denver',
            practice: false,
            settings,
          }),
        ]),
      ),
    ),
  )
  workAt(begun, [morning + hour, morning + 2 * hour])
  begun.close()
  const out = join(folder, 'merged')
  value(mergeLogs({ out, files: [path], office: null }))
  const log = value(takeUpLog(out, office))
  workAt(log, [morning - 24 * hour])
  log.close()
  const again = join(folder, 'again')
  value(mergeLogs({ out: again, files: [out, path], office: null }))
  expect(orderIn(again).map(({ desk }) => desk)).toEqual([deskA, deskA, deskA, office])
})
