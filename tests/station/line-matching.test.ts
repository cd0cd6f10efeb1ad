import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cheapestMatching } from '../../electron/station/matching.ts'

/** How many pairs, and what they cost. */
function worth(costs: number[][], columns: readonly (number | null)[]) {
  const paired = columns.map((column, row) => (column === null ? null : costs[row]?.[column]))
  const real = paired.filter((cost) => cost !== null && cost !== undefined)
  return { pairs: real.length, cost: real.reduce((sum, cost) => sum + cost, 0) }
}

/** The slow obvious way: every way to pair rows with columns. */
function bruteForce(
  costs: number[][],
  row = 0,
  used = new Set<number>(),
): ReturnType<typeof worth> {
  if (row === costs.length) return { pairs: 0, cost: 0 }
  let best = bruteForce(costs, row + 1, used)
  costs[row]?.forEach((cost, column) => {
    if (used.has(column) || cost === Infinity) return
    const rest = bruteForce(costs, row + 1, new Set([...used, column]))
    const here = { pairs: rest.pairs + 1, cost: rest.cost + cost }
    if (here.pairs > best.pairs || (here.pairs === best.pairs && here.cost < best.cost)) best = here
  })
  return best
}

const cost = fc.oneof(
  { arbitrary: fc.integer({ min: 0, max: 40 }), weight: 3 },
  { arbitrary: fc.constant(Infinity), weight: 1 },
)
const small = fc
  .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 6 }))
  .chain(([rows, columns]) =>
    fc.array(fc.array(cost, { minLength: columns, maxLength: columns }), {
      minLength: rows,
      maxLength: rows,
    }),
  )

describe('samplers and animals are paired', () => {
  test('as cheaply as the best of all ways to pair them, tried one by one', () => {
    fc.assert(
      fc.property(small, (costs) => {
        expect(worth(costs, cheapestMatching(costs))).toEqual(bruteForce(costs))
      }),
      { numRuns: 1000, seed: 7 },
    )
  })

  test('each with one other, and never where it cannot be', () => {
    fc.assert(
      fc.property(small, (costs) => {
        const columns = cheapestMatching(costs).filter((column) => column !== null)
        expect(new Set(columns).size).toBe(columns.length)
        cheapestMatching(costs).forEach((column, row) => {
          if (column !== null) expect(costs[row]?.[column]).not.toBe(Infinity)
        })
      }),
      { seed: 8 },
    )
  })

  test('none where there is nobody, or nothing to do', () => {
    expect(cheapestMatching([])).toEqual([])
    expect(cheapestMatching([[], []])).toEqual([null, null])
  })

  test('as in the first example of Kuhn 1955 (from memory): four people, four jobs, three can be placed', () => {
    const qualified = [
      [1, 1, 1, 0],
      [0, 0, 1, 1],
      [0, 0, 0, 1],
      [0, 0, 0, 1],
    ]
    const costs = qualified.map((row) => row.map((each) => (each === 1 ? 0 : Infinity)))
    // The last two are qualified for the fourth job only, so three of the four can be placed.
    expect(worth(costs, cheapestMatching(costs)).pairs).toBe(3)
  })
})
