/** The table of label stocks: what a station prints on, each described once. */
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import {
  checkStock,
  type LabelStock,
  type StockName,
  stockNameOf,
  stockWords,
} from '../../shared-types/label-stock.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'

interface Listed {
  readonly name: StockName
  readonly stock: LabelStock
  readonly retired: boolean
}

/** The name under which a stock of this size is listed, or that it will have. */
export function nameFor(stock: LabelStock, listed: readonly Listed[]): StockName {
  const name = stockNameOf(stock)
  return listed.find((each) => stockNameOf(each.stock) === name)?.name ?? name
}

/** Describes a stock, new or known: of one size there is one. Refuses `stock-impossible`. */
export function decideDescribe(stock: LabelStock, listed: readonly Listed[]): Result<EntryDraft[]> {
  const possible = checkStock(stock)
  if (!possible.ok) return possible
  return granted([draft('stock.described', { name: nameFor(stock, listed), stock })])
}

/** Takes a stock off the table. The last one stays: labels must be printable on something. */
export function decideRetire(name: StockName, listed: readonly Listed[]): Result<EntryDraft[]> {
  const inUse = listed.filter(({ retired }) => !retired)
  const found = inUse.find((each) => each.name === name)
  if (!found) return unknownStock(name)
  if (inUse.length === 1)
    return refused(
      'last-stock',
      `The ${stockWords(found.stock)} is the only label stock left.`,
      'Describe another one first.',
      'name',
    )
  return granted([draft('stock.retired', { name, stock: found.stock })])
}

/** What a printing names must be in the table. */
export function unknownStock(name: StockName): Result<never> {
  return refused(
    'stock-unknown',
    `No label stock ${name} is in the table of this station.`,
    'Choose one of the table, or describe it first (kits screen).',
    'stock',
  )
}
