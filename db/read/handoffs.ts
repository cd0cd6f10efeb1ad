/** Handoffs, loading or signed. */
import type { HandoffCoolerRecord, HandoffRecord, Signature } from '../../shared-types/handoff.ts'
import type { Manifest } from '../../shared-types/manifest.ts'
import type { HandoffNumber } from '../../shared-types/sample-number.ts'
import type { HandoffClassed, HandoffPacked } from '../../shared-types/transport.ts'
import type { ReadableLog } from '../connection.ts'
import type { HandoffCoolerTable, HandoffTable } from '../read-tables.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

const handoffRows = prepareAll((db) =>
  db.selectFrom('handoff').selectAll().orderBy('handoff', 'desc'),
)

/** Every handoff, the latest first. */
export function handoffs(log: ReadableLog): HandoffRecord[] {
  return handoffRows(log).map((row) => rowToHandoff(log, row))
}

const handoffRow = prepareOne((db, p: Params<{ handoff: HandoffNumber }>) =>
  db.selectFrom('handoff').selectAll().where('handoff', '=', p('handoff')),
)

export function handoffOf(log: ReadableLog, handoff: HandoffNumber): HandoffRecord | null {
  const row = handoffRow(log, { handoff })
  return row ? rowToHandoff(log, row) : null
}

const coolerRows = prepareAll((db, p: Params<{ handoff: HandoffNumber }>) =>
  db.selectFrom('handoff_cooler').selectAll().where('handoff', '=', p('handoff')).orderBy('cooler'),
)

function rowToHandoff(log: ReadableLog, row: HandoffTable): HandoffRecord {
  return {
    handoff: row.handoff,
    destination: row.destination,
    state: row.state,
    supplements: row.supplements,
    classed: row.classed === null ? null : (JSON.parse(row.classed) as HandoffClassed),
    packed: row.packed === null ? null : (JSON.parse(row.packed) as HandoffPacked),
    begunMs: row.begun_ms,
    signed: signedOf(row),
    coolers: coolerRows(log, { handoff: row.handoff }).map(rowToHandoffCooler),
  }
}

function signedOf(row: HandoffTable): HandoffRecord['signed'] {
  const { signed_ms: ms, manifest, lead_signature, courier_signature, digest } = row
  if (ms === null || !manifest || !lead_signature || !courier_signature || !digest) return null
  return {
    ms,
    manifest: JSON.parse(manifest) as Manifest,
    leadSignature: JSON.parse(lead_signature) as Signature,
    courierSignature: JSON.parse(courier_signature) as Signature,
    digest,
  }
}

function rowToHandoffCooler(row: HandoffCoolerTable): HandoffCoolerRecord {
  const { cooler, seal, celsius, counted, expected, words, scanned_ms: ms } = row
  if (seal === null || celsius === null || counted === null || expected === null || ms === null)
    return { cooler, scanned: null }
  return { cooler, scanned: { seal, celsius, counted, expected, words, ms } }
}
