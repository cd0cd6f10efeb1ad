/** Printers of Windows, through a small PDF printer that the library carries. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import windows from 'pdf-to-printer'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { Handed, PrinterFound, Printers } from './printers.ts'

async function list(): Promise<Result<PrinterFound[]>> {
  try {
    const printers = await windows.getPrinters()
    return granted(
      printers.map(({ deviceId, name }) => ({ name: deviceId, words: name, trouble: null })),
    )
  } catch {
    return refused(
      'no-printing-system',
      'Windows does not say which printers there are.',
      'Print from the PDF.',
    )
  }
}

async function send(pdf: Uint8Array, printer: string): Promise<Result<Handed>> {
  const folder = await mkdtemp(join(tmpdir(), 'duskline-print-'))
  try {
    const file = join(folder, 'labels.pdf')
    await writeFile(file, pdf)
    await windows.print(file, { printer, scale: 'noscale', silent: true })
    return granted({ printer, job: '' })
  } catch {
    return refused(
      'printing-failed',
      `The printer ${printer} did not take the labels.`,
      'Look whether it is on and has labels, and go on, or print from the PDF.',
      'printer',
    )
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

/** The library answers once Windows has taken the document, and tells no more of it. */
export const windowsPrinters: Printers = {
  list,
  send,
  progress: () => Promise.resolve(granted({ is: 'out' })),
  cancel: () => Promise.resolve(),
}
