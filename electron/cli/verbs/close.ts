/** `close`: the close sheet of a desk's day, or of a station's where the log is a merged one. */
import type { ParsedInput } from '../../../shared-types/desk-api.ts'
import { granted, type Result } from '../../../shared-types/result.ts'
import type { StationCloseView } from '../../../shared-types/views/station-close.ts'
import { type FileDesk, readDesk } from '../../desk/read-desk.ts'
import { withDesk, writeCloseSheet, writeStationCloseSheet } from '../documents.ts'
import { type Outcome, notDone, told } from '../outcome.ts'

type Asked = ParsedInput<'stationClose'>

export async function close(file: string, out: string, asked: Asked): Promise<Outcome> {
  const closed = await withDesk(readDesk(file, Date.now), (desk) => closeOf(desk, out, asked))
  return closed.ok ? closed.value : notDone(closed.refusal)
}

async function closeOf(desk: FileDesk, out: string, asked: Asked): Promise<Result<Outcome>> {
  const who = await desk.ask('who', {})
  if (!who.ok) return who
  if (who.value.station.office) return stationClose(desk, out, asked)
  const paths = await writeCloseSheet(desk, { file: out }, asked.date)
  return paths.ok ? granted(told(paths.value, { files: paths.value })) : paths
}

/** Ends well only where the station's close is signed and still fits its desks. */
async function stationClose(desk: FileDesk, out: string, asked: Asked): Promise<Result<Outcome>> {
  const view = await desk.ask('stationClose', asked)
  if (!view.ok) return view
  const paths = await writeStationCloseSheet(desk, { file: out }, asked)
  if (!paths.ok) return paths
  const outcome = told([...lines(view.value), ...paths.value], {
    files: paths.value,
    close: view.value,
  })
  const open = openOf(view.value)
  return granted(open === null ? outcome : { ...outcome, refusal: open })
}

function openOf({ open, signed }: StationCloseView) {
  const [first] = open
  if (first) return { code: first.code, say: first.say, next: first.next }
  if (signed && !signed.outdated) return null
  return {
    code: 'station-not-signed',
    say: signed ? 'A desk has changed since the station was signed.' : 'The station is not signed.',
    next: 'A lead of the office signs it on the close screen.',
  }
}

function lines({ day, desks, items, unsettled }: StationCloseView): string[] {
  return [
    `Station ${day?.station ?? ''}, ${day?.date ?? ''}:`,
    ...desks.map(
      ({ desk, state, lead, second, amended }) =>
        `  desk ${desk}: ${state === 'closed' ? `closed by ${lead ?? ''}${second === null ? '' : ` and ${second}`}` : state === 'open' ? 'NOT CLOSED' : 'did not work'}${amended.length === 0 ? '' : `, ${amended.length} amended after`}`,
    ),
    ...items.map(
      ({ words, counted, expected, variance, explained }) =>
        `  ${words}: ${counted} of ${expected}${variance === 0 ? '' : explained ? ', explained' : ', NO REASON GIVEN'}`,
    ),
    `  discrepancies not settled: ${unsettled}`,
  ]
}
