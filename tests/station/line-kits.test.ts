import fc from 'fast-check'
import jstat from 'jstat'
import { describe, expect, test } from 'vitest'
import {
  type KitHolder,
  type KitNeed,
  kitOutlook,
  kitsToAskFor,
  proposeMoves,
  wantedInHand,
} from '../../electron/station/kit-run-out.ts'

/** Ten an hour for six hours, as sure as chance allows. */
const need = (changed: Partial<KitNeed> = {}): KitNeed => ({
  certain: 0,
  comingWithin: (minutes) => ({ mean: minutes / 6, shape: Infinity }),
  minutesToClose: 360,
  ...changed,
})
const holder = (who: string, kits: number): KitHolder<string> => ({
  who,
  kits,
  share: 0.5,
  perHour: 8,
})

describe('the kits', () => {
  test('last to the close with the chance that no more are needed', () => {
    // Poisson of mean 60: at most 73 on 95 of 100 days, by jStat.
    expect(jstat.poisson.cdf(72, 60)).toBeLessThan(0.95)
    expect(jstat.poisson.cdf(73, 60)).toBeGreaterThan(0.95)
    const outlook = kitOutlook(73, need())
    expect(outlook.enough).toBe(73)
    expect(outlook.chance).toBeGreaterThanOrEqual(0.95)
    expect(outlook.shortAfter).toBeNull()
    expect(kitsToAskFor(outlook)).toBe(0)
  })

  test('are short from the moment at which 95 of 100 days would need more', () => {
    const { shortAfter, chance } = kitOutlook(28, need())
    // Poisson of mean 20 needs 28 on 95 of 100 days: two hours of ten an hour.
    expect(shortAfter).toBe(125)
    expect(chance).toBeLessThan(0.01)
    expect(kitsToAskFor(kitOutlook(28, need()))).toBe(45)
  })

  test('that animals here need for certain are gone first', () => {
    expect(kitOutlook(20, need({ certain: 25 }))).toMatchObject({ shortAfter: 0, chance: 0 })
  })

  test('of nobody are short at once when any are needed', () => {
    expect(kitOutlook(0, need()).shortAfter).toBe(5)
    expect(kitOutlook(0, need({ minutesToClose: 0 })).shortAfter).toBeNull()
  })
})

describe('moves are proposed', () => {
  test('from stock to who is short, as many as two hours want', () => {
    const short = holder('ines', 0)
    const moves = proposeMoves([short, holder('bram', 40)], 100, need())
    expect(moves).toEqual([{ from: 'stock', to: 'ines', count: wantedInHand(short, need()) }])
  })

  test('from whoever has most to spare, once stock is empty', () => {
    const moves = proposeMoves([holder('ines', 2), holder('bram', 40)], 3, need())
    expect(moves[0]).toEqual({ from: 'stock', to: 'ines', count: 3 })
    expect(moves[1]).toMatchObject({ from: 'bram', to: 'ines' })
  })

  test('to nobody who has enough, and from nobody who has not', () => {
    expect(proposeMoves([holder('ines', 30), holder('bram', 30)], 100, need())).toEqual([])
    expect(proposeMoves([holder('ines', 1), holder('bram', 1)], 0, need())).toEqual([])
  })

  test('of no more kits than there are, and no kit is made or lost', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 0, max: 40 }),
        (hands, stock) => {
          const holders = hands.map((kits, at) => ({
            who: `s${at}`,
            kits,
            share: 1 / hands.length,
            perHour: 8,
          }))
          const left = new Map([
            ['stock', stock],
            ...holders.map(({ who, kits }) => [who, kits] as const),
          ])
          for (const { from, to, count } of proposeMoves(holders, stock, need())) {
            expect(count).toBeGreaterThan(0)
            left.set(from, (left.get(from) ?? 0) - count)
            left.set(to, (left.get(to) ?? 0) + count)
          }
          for (const kits of left.values()) expect(kits).toBeGreaterThanOrEqual(0)
        },
      ),
      { seed: 5 },
    )
  })
})
