/** The label stocks of a station: the common sizes, and those described here, as they were said last. */
import { commonStocks } from '../../shared-types/common-stocks.ts'
import type { LabelStock, StockName } from '../../shared-types/label-stock.ts'
import type { ReadableLog } from '../connection.ts'
import { prepareAll } from '../statement.ts'

const stockRows = prepareAll((db) => db.selectFrom('stock').selectAll().orderBy('name'))

export interface StockRecord {
  readonly name: StockName
  readonly stock: LabelStock
  readonly retired: boolean
}

/** Every stock that a label may have been printed on, in use or not. */
export function allStocks(log: ReadableLog): StockRecord[] {
  const stocks = new Map<StockName, StockRecord>(
    Object.entries(commonStocks).map(([name, stock]) => [name, { name, stock, retired: false }]),
  )
  for (const { name, stock, retired } of stockRows(log))
    stocks.set(name, { name, stock: JSON.parse(stock) as LabelStock, retired: retired === 1 })
  return [...stocks.values()]
}

/** A stock by its name; null for one that nobody has described. */
export function stockNamed(log: ReadableLog, name: StockName): LabelStock | null {
  return allStocks(log).find((each) => each.name === name)?.stock ?? null
}
