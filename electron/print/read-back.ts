/** Reads a manifest back out of its PDF: the digest and the bags as printed, and the data inside it. */
import type { PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { BagNumber, readSampleNumber } from '../../shared-types/sample-number.ts'

export interface ManifestOnPaper {
  /** The digest as printed in words; null where the pages hold none. */
  readonly digest: string | null
  /** In the order of the pages. */
  readonly bags: readonly BagNumber[]
  /** The data file inside the PDF, as text; null where there is none. */
  readonly data: string | null
}

const groupedBag = /\b\d{2}-[0-9A-Z]{3}-[0-9A-Z]\d{4}-[LRX]-[0-9A-Z]\b/g
const groupedDigest = /\b(?:[0-9a-f]{8} ){7}[0-9a-f]{8}\b/

/** Null for bytes that are no PDF. Bags struck through are printed ungrouped, and so are not of the list. */
export async function readManifestPdf(bytes: Uint8Array): Promise<ManifestOnPaper | null> {
  // Loaded when it is needed: the desk prints a hundred times for once that it reads.
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs')
  // pdf.js takes the bytes away, so it is given a copy.
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false })
  try {
    const document = await task.promise
    const pages: string[] = []
    for (let number = 1; number <= document.numPages; number += 1) {
      const { items } = await (await document.getPage(number)).getTextContent()
      pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '))
    }
    const text = pages.join(' ').replace(/\s+/g, ' ')
    return {
      digest: groupedDigest.exec(text)?.[0].replaceAll(' ', '') ?? null,
      bags: (text.match(groupedBag) ?? []).flatMap(bagOf),
      data: await dataIn(document),
    }
  } catch {
    return null
  } finally {
    await task.destroy()
  }
}

function bagOf(text: string): BagNumber[] {
  const read = readSampleNumber(text)
  return read.ok ? [BagNumber.parse(read.value)] : []
}

/** The one file that a manifest carries. */
async function dataIn(document: PDFDocumentProxy): Promise<string | null> {
  const [name] = (await document.getAttachments())?.keys() ?? []
  if (name === undefined) return null
  const content: unknown = await document.getAttachmentContent(name)
  return content instanceof Uint8Array ? new TextDecoder().decode(content) : null
}
