/** Office paper and the frame every page of a document shares: margins, and a foot that says where one is. */
import { type FilledPage, type Section, filledPages } from './flow.ts'
import { type Mark, type Page, ruleMark, shifted, textMark } from './mark.ts'
import { lineHeight, textWidth, wrapped } from './ruler.ts'

export type PaperName = 'a4' | 'letter'

/** ISO 216 A4 and US Letter (8.5 by 11 in), in points. */
const paperSizes: Record<PaperName, { readonly width: number; readonly height: number }> = {
  a4: { width: 595.28, height: 841.89 },
  letter: { width: 612, height: 792 },
}

const margin = 36
const footSize = 10
const footHeight = 21

/** Width between the margins, in points. */
export function innerWidth(paper: PaperName): number {
  return paperSizes[paper].width - 2 * margin
}

/** As much of the text as one line holds: the foot only reminds, the first page says it in full. */
function onOneLine(text: string, width: number): string {
  const [line = '', ...more] = wrapped(text, 'regular', footSize, width - footSize)
  return more.length === 0 ? line : `${line}…`
}

function footMarks(paper: PaperName, left: string, right: string): Mark[] {
  const width = innerWidth(paper)
  const y = paperSizes[paper].height - margin - lineHeight(footSize)
  const x = margin + width - textWidth(right, 'bold', footSize)
  return [
    ruleMark(margin, y - 4, width),
    textMark(margin, y, onOneLine(left, x - margin - footSize), 'regular', footSize),
    textMark(x, y, right, 'bold', footSize),
  ]
}

/**
 * The sections on pages of this paper, each with a foot: what `foot` says of it, and `page x of y`.
 * Rows are never taller than a page, because tables cut long cells.
 */
export function paperPages<Row extends Section['rows'][number]>(
  paper: PaperName,
  sections: readonly Section<Row>[],
  foot: (page: FilledPage<Row>, place: number) => string,
): Page[] {
  const size = paperSizes[paper]
  const filled = filledPages(sections, size.height - 2 * margin - footHeight)
  if (!filled) throw new Error('a row is taller than the page')
  return filled.map((page, place) => ({
    ...size,
    marks: [
      ...shifted(page.marks, margin, margin),
      ...footMarks(paper, foot(page, place), `page ${place + 1} of ${filled.length}`),
    ],
  }))
}
