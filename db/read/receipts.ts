/** Counter-scans that came back. */
import type { ReceiptCounted } from '../../shared-types/receipt.ts'
import type { HandoffNumber, PersonId } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import type { ReceiptTable } from '../read-tables.ts'
import { type Params, prepareAll } from '../statement.ts'

export interface ReceiptRecord {
  readonly hash: string
  readonly counted: ReceiptCounted
  readonly ms: number
  readonly by: PersonId | null
}

const rowsOf = prepareAll((db, p: Params<{ handoff: HandoffNumber }>) =>
  db
    .selectFrom('receipt')
    .selectAll()
    .where('handoff', '=', p('handoff'))
    .orderBy('ms', 'desc')
    .orderBy('hash'),
)

function rowToReceipt({ hash, body, ms, by }: ReceiptTable): ReceiptRecord {
  return { hash, counted: JSON.parse(body) as ReceiptCounted, ms, by }
}

/** The counter-scans of a handoff, the latest first: a later one takes the place of those before. */
export function receiptsOf(log: ReadableLog, handoff: HandoffNumber): ReceiptRecord[] {
  return rowsOf(log, { handoff }).map(rowToReceipt)
}
