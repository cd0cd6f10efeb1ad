/** The documents of a log as new files: labels on record, close sheet, manifests. */
import { join } from 'node:path'
import type { CallInput } from '../../shared-types/desk-api.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { PdfFile } from '../../shared-types/views/common.ts'
import type { FileDesk } from '../desk/read-desk.ts'
import { type NewFile, writeNew } from './new-files.ts'

function pdfAt(path: string, { base64 }: PdfFile): NewFile {
  return { path, content: Buffer.from(base64, 'base64') }
}

/** Writes a document to `out`, or under its own name into the folder `out`. */
function write(pdf: Result<PdfFile>, out: Place): Result<string[]> {
  if (!pdf.ok) return pdf
  return writeNew([pdfAt('file' in out ? out.file : join(out.folder, pdf.value.name), pdf.value)])
}

export type Place = { readonly file: string } | { readonly folder: string }

export async function writeLabels(desk: FileDesk, out: Place): Promise<Result<string[]>> {
  return write(await desk.ask('labelsOnRecord', {}), out)
}

/** The close sheet of a date, or of the last day. */
export async function writeCloseSheet(
  desk: FileDesk,
  out: Place,
  date?: LocalDate,
): Promise<Result<string[]>> {
  return write(await desk.ask('closeSheet', { date }), out)
}

/** The close sheet of a station's day over its desks, or of the latest. */
export async function writeStationCloseSheet(
  desk: FileDesk,
  out: Place,
  asked: CallInput<'stationClose'>,
): Promise<Result<string[]>> {
  return write(await desk.ask('stationCloseSheet', asked), out)
}

/** The manifests of all signed handoffs, each as PDF, JSON and CSV. Refuses `no-signed-handoff`. */
export async function writeManifests(desk: FileDesk, folder: string): Promise<Result<string[]>> {
  const handoffs = await desk.ask('handoffs', {})
  if (!handoffs.ok) return handoffs
  const files: NewFile[] = []
  for (const { handoff, state } of handoffs.value.handoffs) {
    if (state !== 'signed') continue
    const manifest = await desk.ask('manifest', { handoff })
    if (!manifest.ok) return manifest
    const { pdf, json, csv } = manifest.value
    files.push(pdfAt(join(folder, pdf.name), pdf))
    for (const { name, text } of [json, csv])
      files.push({ path: join(folder, name), content: text })
  }
  return files.length > 0 ? writeNew(files) : noSignedHandoff()
}

function noSignedHandoff(): Result<never> {
  return refused(
    'no-signed-handoff',
    'No handoff of this log is signed.',
    'Sign one at the desk first (handoff screen).',
  )
}

/** Opens a log to ask it, and closes it again whatever happens. */
export async function withDesk<T>(
  opened: Result<FileDesk>,
  act: (desk: FileDesk) => Promise<Result<T>>,
): Promise<Result<T>> {
  if (!opened.ok) return opened
  try {
    return await act(opened.value)
  } finally {
    opened.value.close()
  }
}

/** Several results in a row, all granted or the first refusal. */
export function allGranted<T>(results: readonly Result<T[]>[]): Result<T[]> {
  const all: T[] = []
  for (const result of results) {
    if (!result.ok) return result
    all.push(...result.value)
  }
  return granted(all)
}
