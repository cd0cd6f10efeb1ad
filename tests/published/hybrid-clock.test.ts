/**
 * Source of the rules: Kulkarni, Demirbas, Madappa, Avva, Leone, "Logical Physical Clocks", OPODIS
 * 2014, Fig. 5. The trace was worked out by hand from them; it is not printed in the paper.
 */
import { expect, test } from 'vitest'
import { receive, tick } from '../../db/log/hybrid-clock.ts'
import { type Stamp, zeroStamp } from '../../shared-types/stamp.ts'

const stamp = (ms: number, n: number): Stamp => ({ ms, n })

test('a desk follows the rules of the paper through a run of facts made here and heard of', () => {
  const trace: readonly ((last: Stamp) => Stamp)[] = [
    (last) => tick(last, 10),
    (last) => tick(last, 10),
    (last) => tick(last, 9),
    (last) => receive(last, stamp(12, 3), 11),
    (last) => tick(last, 12),
    (last) => tick(last, 13),
    (last) => receive(last, stamp(13, 7), 13),
    (last) => receive(last, stamp(15, 5), 20),
  ]
  let last = zeroStamp
  const stamps = trace.map((step) => (last = step(last)))
  expect(stamps).toEqual([
    stamp(10, 0),
    stamp(10, 1),
    stamp(10, 2),
    stamp(12, 4),
    stamp(12, 5),
    stamp(13, 0),
    stamp(13, 8),
    stamp(20, 0),
  ])
})

test('the larger counter wins when here, there and the wall clock agree on the millisecond', () => {
  expect(receive(stamp(13, 8), stamp(13, 99), 12)).toEqual(stamp(13, 100))
})

test('a fact heard late does not move this desk but by its counter', () => {
  expect(receive(stamp(13, 8), stamp(11, 99), 12)).toEqual(stamp(13, 9))
})
