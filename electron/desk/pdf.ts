import type { PdfFile } from '../../shared-types/views/common.ts'
import type { PaperName } from '../print/paper.ts'

/** A PDF as screens and terminal receive it. */
export function pdfFile(name: string, bytes: Uint8Array): PdfFile {
  return { name, base64: Buffer.from(bytes).toString('base64') }
}

/** The office paper of a station's part of the world: US Letter in the Americas, else A4. */
export function paperOf(zone: string): PaperName {
  return zone.startsWith('America/') || zone === 'Pacific/Honolulu' ? 'letter' : 'a4'
}
