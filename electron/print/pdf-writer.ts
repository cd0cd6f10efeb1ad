/** Draws pages of marks into a PDF: vectors and embedded fonts only, no images. */
import PDFDocument from 'pdfkit'
import { drawBarcode } from './barcode.ts'
import type { LineMark, Mark, Page, Point, ShapeMark, TextMark } from './mark.ts'
import { registerFaces } from './ruler.ts'

export interface PdfHeading {
  readonly title: string
  /** When the document was made, UTC milliseconds: the only date in the file, so equal data gives equal bytes. */
  readonly madeAtMs: number
  /** A data file carried inside the PDF, for machines. */
  readonly inside?: { readonly name: string; readonly text: string }
}

function drawText(doc: PDFKit.PDFDocument, { x, y, text, face, size, ink }: TextMark): void {
  doc.font(face, size).fillColor(ink).text(text, x, y, { lineBreak: false })
}

function tracePath(doc: PDFKit.PDFDocument, points: readonly Point[]): void {
  points.forEach(({ x, y }, place) => {
    if (place === 0) doc.moveTo(x, y)
    else doc.lineTo(x, y)
  })
}

function drawShape(doc: PDFKit.PDFDocument, { points, thick }: ShapeMark): void {
  tracePath(doc, points)
  doc.closePath()
  if (thick === 'filled') doc.fill('black')
  else doc.lineWidth(thick).lineJoin('miter').stroke('black')
}

function drawLine(doc: PDFKit.PDFDocument, { points, thick }: LineMark): void {
  const [first] = points
  if (!first) return
  tracePath(doc, points.length === 1 ? [first, first] : points)
  doc.lineWidth(thick).lineCap('round').lineJoin('round').stroke('black')
}

function drawMark(doc: PDFKit.PDFDocument, mark: Mark): void {
  switch (mark.kind) {
    case 'text':
      return drawText(doc, mark)
    case 'shape':
      return drawShape(doc, mark)
    case 'line':
      return drawLine(doc, mark)
    case 'barcode':
      return drawBarcode(doc, mark.symbol, mark.x, mark.y)
  }
}

function newDocument({ title, madeAtMs }: PdfHeading): PDFKit.PDFDocument {
  const doc = new PDFDocument({
    autoFirstPage: false,
    margin: 0,
    lang: 'en',
    displayTitle: true,
    info: { Title: title, Creator: 'Duskline', CreationDate: new Date(madeAtMs) },
  })
  registerFaces(doc)
  return doc
}

/** Pages drawn at one go; then others may have their turn, so that the desk answers meanwhile. */
const atOnce = 50

/**
 * The PDF of the pages. The same pages and heading give the same bytes. `onPages` is told now and then
 * how many pages are drawn.
 */
export async function writePdf(
  pages: readonly Page[],
  heading: PdfHeading,
  onPages?: (written: number) => void,
): Promise<Uint8Array> {
  const doc = newDocument(heading)
  const chunks: Uint8Array[] = []
  const written = new Promise<void>((resolve, reject) => {
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    doc.on('end', resolve)
    doc.on('error', reject)
  })
  for (const [place, { width, height, marks }] of pages.entries()) {
    if (place > 0 && place % atOnce === 0) {
      onPages?.(place)
      await new Promise((resolve) => setImmediate(resolve))
    }
    doc.addPage({ size: [width, height], margin: 0 })
    for (const mark of marks) drawMark(doc, mark)
  }
  const { inside, madeAtMs } = heading
  if (inside)
    doc.file(Buffer.from(inside.text), {
      name: inside.name,
      type: 'application/json',
      creationDate: new Date(madeAtMs),
      modifiedDate: new Date(madeAtMs),
    })
  doc.end()
  await written
  return new Uint8Array(Buffer.concat(chunks))
}
