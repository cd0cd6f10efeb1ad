/** Paragraphs as blocks. */
import type { Block } from './flow.ts'
import { type Face, textMark } from './mark.ts'
import { lineHeight, wrapped } from './ruler.ts'

/** The text wrapped to `width` points, one line under the other. */
export function paragraph(text: string, face: Face, size: number, width: number): Block {
  const lines = wrapped(text, face, size, width)
  return {
    height: lines.length * lineHeight(size),
    marks: lines.map((line, place) => textMark(0, place * lineHeight(size), line, face, size)),
  }
}
