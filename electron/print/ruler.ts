/**
 * Measures text before it is drawn. DejaVu (free licence, TrueType) is embedded because the
 * fonts built into PDF readers lack most letters of people's and places' names.
 */
import { createRequire } from 'node:module'
import PDFDocument from 'pdfkit'
import type { Face } from './mark.ts'

const fontFiles: Record<Face, string> = {
  regular: 'DejaVuSansCondensed.ttf',
  bold: 'DejaVuSansCondensed-Bold.ttf',
  mono: 'DejaVuSansMono.ttf',
}

/** Where the font of a face lies on disk. */
export function fontPath(face: Face): string {
  return createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${fontFiles[face]}`)
}

/** Makes the faces known to a document by their names. */
export function registerFaces(doc: PDFKit.PDFDocument): void {
  for (const face of Object.keys(fontFiles)) doc.registerFont(face, fontPath(face as Face))
}

let scratch: PDFKit.PDFDocument | undefined

/** Never written out: pdfkit measures only with a document at hand, and loading fonts is slow. */
function scratchDocument(): PDFKit.PDFDocument {
  if (!scratch) {
    scratch = new PDFDocument({ autoFirstPage: false })
    registerFaces(scratch)
  }
  return scratch
}

/** Widths at 1 point. The labels of a batch say the same words over and over. */
const known = new Map<string, number>()
/** Enough for the words of a large batch. Numbers come and go, and the fonts keep each word they measured. */
const mostKnown = 6000

function forget(): void {
  known.clear()
  scratch = undefined
}

/** Width of one line of text in points: it grows with the size of the type. */
export function textWidth(text: string, face: Face, size: number): number {
  const key = `${face} ${text}`
  const kept = known.get(key)
  if (kept !== undefined) return kept * size
  if (known.size >= mostKnown) forget()
  const width = scratchDocument().font(face, 1).widthOfString(text)
  known.set(key, width)
  return width * size
}

/** Height of a line box in points: ascent and descent of the DejaVu fonts, 1.164 em. */
export function lineHeight(size: number): number {
  return size * 1.164
}

/** As much of a word that is wider than the line as fits, and the rest. */
function brokenWord(word: string, fits: (text: string) => boolean): [string, string] {
  const letters = [...word]
  let taken = 1
  while (taken < letters.length && fits(letters.slice(0, taken + 1).join(''))) taken++
  return [letters.slice(0, taken).join(''), letters.slice(taken).join('')]
}

/** The text in lines no wider than `width`: broken at spaces, inside a word only if it must be. */
export function wrapped(text: string, face: Face, size: number, width: number): string[] {
  const fits = (line: string): boolean => textWidth(line, face, size) <= width
  const lines: string[] = []
  let line = ''
  for (const word of text.split(/\s+/).filter((each) => each !== '')) {
    const longer = line === '' ? word : `${line} ${word}`
    if (fits(longer)) {
      line = longer
      continue
    }
    if (line !== '') lines.push(line)
    line = word
    while (!fits(line) && [...line].length > 1) {
      const [head, rest] = brokenWord(line, fits)
      lines.push(head)
      line = rest
    }
  }
  return line === '' ? lines : [...lines, line]
}
