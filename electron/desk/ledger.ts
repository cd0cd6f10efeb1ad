/** Opening a ledger: its accounts, and the entries behind any balance. */
import type { ReadableLog } from '../../db/connection.ts'
import { understood } from '../../db/fold/fold.ts'
import { entriesOfKinds } from '../../db/log/read-entries.ts'
import { granted } from '../../shared-types/result.ts'
import type { LedgerLine, LedgerName } from '../../shared-types/views/ledger.ts'
import { bagBook } from '../station/ledger/bag-book.ts'
import { balancesOf, type Book, linesOf } from '../station/ledger/book.ts'
import { kitBook } from '../station/ledger/kit-book.ts'
import { labelBook } from '../station/ledger/label-book.ts'
import { sayEntry } from '../station/story.ts'
import type { QueryHandlers } from './call.ts'
import { namesOf } from './names.ts'

export const books: Readonly<Record<LedgerName, Book>> = {
  kits: kitBook,
  labels: labelBook,
  bags: bagBook,
}

/** Everything that a ledger's entries moved, oldest first. */
export function transfersIn(log: ReadableLog, { kinds, transfers }: Book) {
  const entries = entriesOfKinds(log, kinds)
  return transfers(
    Array.from(entries, understood).flatMap((entry) => (entry === null ? [] : [entry])),
  )
}

const shownLines = 500

export const ledgerQueries = {
  ledger: ({ log }, { ledger, account }) => {
    const book = books[ledger]
    const nameOf = namesOf(log)
    const transfers = transfersIn(log, book)
    const lines = account === null ? [] : linesOf(transfers, account)
    const shown = lines.slice(-shownLines).toReversed()
    return granted({
      accounts: Array.from(balancesOf(transfers), ([key, count]) => {
        const outside = key === book.outside
        return {
          key,
          words: book.words(key, nameOf),
          outside,
          balance: outside ? 0 - count : count,
        }
      }),
      lines: shown.map(
        ({ entry, other, delta, balance }): LedgerLine => ({
          ms: entry.at.wall,
          by: entry.by ? nameOf(entry.by) : '',
          say: sayEntry(entry, nameOf),
          other: book.words(other, nameOf),
          delta,
          balance,
        }),
      ),
      lineCount: lines.length,
    })
  },
} satisfies Partial<QueryHandlers>
