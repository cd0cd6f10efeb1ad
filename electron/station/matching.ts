/**
 * The cheapest way to pair each row with a column of its own: the assignment problem, by shortest
 * augmenting paths. Source: Kuhn, "The Hungarian Method for the Assignment Problem", Naval Research
 * Logistics Quarterly 2, 1955; Jonker & Volgenant, "A Shortest Augmenting Path Algorithm for Dense and
 * Sparse Linear Assignment Problems", Computing 38, 1987.
 */

/** Dearer than any sum of real costs: a pair that cannot be. */
const never = 1e12

/**
 * The column of each row, or null for a row left alone. As many rows as possible are paired, and of
 * all such ways this one costs least.
 *
 * @param costs one array a row; `Infinity` for a pair that cannot be; real costs under 1e9 in size.
 */
export function cheapestMatching(costs: readonly (readonly number[])[]): (number | null)[] {
  const width = costs[0]?.length ?? 0
  // A column for each row to stay alone with, so that every row always finds a place.
  const padded = costs.map((row) => [
    ...row.map((cost) => (cost === Infinity ? 2 * never : cost)),
    ...costs.map(() => never),
  ])
  return assign(padded, width + costs.length).map((column) => (column < width ? column : null))
}

/** Columns of the rows where there are at least as many columns as rows. */
function assign(costs: readonly (readonly number[])[], width: number): number[] {
  const rowPrice = new Float64Array(costs.length)
  const columnPrice = new Float64Array(width)
  const rowAt = new Int32Array(width).fill(-1)
  for (let row = 0; row < costs.length; row += 1) {
    const { end, cameFrom } = shortestPath(costs, row, rowPrice, columnPrice, rowAt)
    for (let column = end; column >= 0; ) {
      const before = cameFrom[column] ?? -1
      rowAt[column] = before < 0 ? row : (rowAt[before] ?? -1)
      column = before
    }
  }
  const columns = costs.map(() => width)
  rowAt.forEach((row, column) => {
    if (row >= 0) columns[row] = column
  })
  return columns
}

/** Dijkstra from a row to the nearest free column, by reduced costs; moves the prices along. */
function shortestPath(
  costs: readonly (readonly number[])[],
  start: number,
  rowPrice: Float64Array,
  columnPrice: Float64Array,
  rowAt: Int32Array,
): { end: number; cameFrom: Int32Array } {
  const width = columnPrice.length
  const distance = new Float64Array(width).fill(Infinity)
  const cameFrom = new Int32Array(width).fill(-1)
  const settled: number[] = []
  const isSettled = new Uint8Array(width)
  let [row, column, far] = [start, -1, 0]
  for (;;) {
    let nearest = -1
    for (let next = 0; next < width; next += 1) {
      if (isSettled[next]) continue
      const cost = costs[row]?.[next] ?? Infinity
      const reach = far + cost - (rowPrice[row] ?? 0) - (columnPrice[next] ?? 0)
      if (reach < (distance[next] ?? 0)) {
        distance[next] = reach
        cameFrom[next] = column
      }
      if (nearest < 0 || (distance[next] ?? 0) < (distance[nearest] ?? 0)) nearest = next
    }
    far = distance[nearest] ?? Infinity
    column = nearest
    if ((rowAt[nearest] ?? -1) < 0) break
    isSettled[nearest] = 1
    settled.push(nearest)
    row = rowAt[nearest] ?? -1
  }
  rowPrice[start] = (rowPrice[start] ?? 0) + far
  for (const each of settled) {
    const saved = far - (distance[each] ?? 0)
    const owner = rowAt[each] ?? 0
    rowPrice[owner] = (rowPrice[owner] ?? 0) + saved
    columnPrice[each] = (columnPrice[each] ?? 0) - saved
  }
  return { end: column, cameFrom }
}
