import fc from 'fast-check'
import { expect, test } from 'vitest'
import { receive, tick } from '../../db/log/hybrid-clock.ts'
import { orderStamp, type Stamp } from '../../shared-types/stamp.ts'

const stamp: fc.Arbitrary<Stamp> = fc.record({ ms: fc.nat(50), n: fc.nat(5) })

test('a fact always comes after the last one, whatever the wall clock says', () => {
  fc.assert(
    fc.property(stamp, fc.nat(60), (last, wallMs) => {
      expect(orderStamp(last, tick(last, wallMs))).toBeLessThan(0)
    }),
  )
})

test('hearing of a fact puts this desk after it and after its own last one', () => {
  fc.assert(
    fc.property(stamp, stamp, fc.nat(60), (last, message, wallMs) => {
      const now = receive(last, message, wallMs)
      expect(orderStamp(last, now)).toBeLessThan(0)
      expect(orderStamp(message, now)).toBeLessThan(0)
    }),
  )
})

test('the stamp shows the wall clock as soon as that is ahead again', () => {
  expect(tick({ ms: 10, n: 7 }, 11)).toEqual({ ms: 11, n: 0 })
  expect(receive({ ms: 10, n: 7 }, { ms: 9, n: 1 }, 11)).toEqual({ ms: 11, n: 0 })
})
