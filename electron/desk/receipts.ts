/** The counter-scan of a delivery: by a file that comes back, or scanned at the office. */
import type { ReadableLog } from '../../db/connection.ts'
import { receiptsOf } from '../../db/read/receipts.ts'
import type { HandoffRecord } from '../../shared-types/handoff.ts'
import type { ReceiptCounted } from '../../shared-types/receipt.ts'
import { granted, type Result } from '../../shared-types/result.ts'
import type { ReceiptView } from '../../shared-types/views/custody.ts'
import type { ParsedInput } from '../../shared-types/desk-api.ts'
import { decideReceipt, readReceiptRows, receiptFindings } from '../station/receipt.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { cells } from './cold.ts'
import { findHandoff } from './find.ts'
import { namesOf } from './names.ts'

function receiptView(log: ReadableLog, { handoff, signed }: HandoffRecord): ReceiptView {
  const [latest] = receiptsOf(log, handoff)
  const expected = signed?.manifest.coolers.flatMap(({ bags }) => bags.map(({ bag }) => bag)) ?? []
  if (!latest || !signed) return { handoff, expected, counted: null, findings: [] }
  const { counted, ms, by } = latest
  return {
    handoff,
    expected,
    counted: {
      ms,
      receivedBy: counted.receivedBy,
      file: counted.file,
      bags: counted.bags.length,
      enteredBy: by ? namesOf(log)(by) : '',
    },
    findings: receiptFindings(signed.manifest, counted),
  }
}

type Counted = ParsedInput<'receipt.count'>['counted']

function countedOf(counted: Counted): Result<Pick<ReceiptCounted, 'bags' | 'coolers' | 'file'>> {
  if (counted.how === 'scanned')
    return granted({ bags: counted.bags, coolers: counted.coolers, file: null })
  const rows = cells(counted.text).filter((row) => row.some((cell) => cell !== ''))
  const bags = readReceiptRows(rows, counted.columns)
  return bags.ok ? granted({ bags: bags.value, coolers: [], file: counted.name }) : bags
}

export const receiptQueries = {
  receipt: ({ log }, { handoff: text }) => {
    const handoff = findHandoff(log, text)
    return handoff.ok ? granted(receiptView(log, handoff.value)) : handoff
  },
} satisfies Partial<QueryHandlers>

export const receiptCommands = {
  'receipt.count': ({ act, log }, { handoff: text, receivedBy, counted }) => {
    const done = act((tx) => {
      const handoff = findHandoff(tx, text)
      if (!handoff.ok) return handoff
      const read = countedOf(counted)
      if (!read.ok) return read
      const drafts = decideReceipt(handoff.value, { receivedBy, ...read.value })
      return drafts.ok ? granted({ drafts: drafts.value, value: handoff.value }) : drafts
    })
    return done.ok ? granted(receiptView(log, done.value)) : done
  },
} satisfies Partial<CommandHandlers>
