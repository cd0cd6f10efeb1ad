/** A guide of one page: what a role does, in the words that the screen shows too. */
import type { Guide, GuidePart } from '../../shared-types/help/guides.ts'
import { type Block, beside, gap, stacked } from './flow.ts'
import { ruleMark, textMark } from './mark.ts'
import { innerWidth, type PaperName, paperPages } from './paper.ts'
import { writePdf } from './pdf-writer.ts'
import { lineHeight } from './ruler.ts'
import { paragraph } from './text-block.ts'

const sizes = { title: 24, about: 13, head: 14, line: 11.5, caution: 10.5 }
type Sizes = typeof sizes
const indent = 22

/** As large as one page allows: it is read standing, from across a table. */
const scales = [1.4, 1.3, 1.2, 1.1, 1]

function scaled(by: number): Sizes {
  const entries = Object.entries(sizes).map(([name, size]) => [name, size * by])
  return Object.fromEntries(entries) as Sizes
}

const foot = 'Duskline · keep this page at the table'

function rule(width: number): Block {
  return { height: 8, marks: [ruleMark(0, 3, width)] }
}

/** A numbered or dotted line, its words hanging clear of the sign. */
function item(sign: string, text: string, type: number, width: number): Block {
  const mark: Block = { height: lineHeight(type), marks: [textMark(2, 0, sign, 'bold', type)] }
  return stacked([
    beside([
      { x: 0, block: mark },
      { x: indent, block: paragraph(text, 'regular', type, width - indent) },
    ]),
    gap(3),
  ])
}

function part({ title, lines }: GuidePart, isNumbered: boolean, size: Sizes, width: number): Block {
  return stacked([
    paragraph(title, 'bold', size.head, width),
    gap(3),
    ...lines.map((line, place) => item(isNumbered ? `${place + 1}` : '–', line, size.line, width)),
    gap(9),
  ])
}

/** The cautions in a frame of their own, so that they are found first. */
function boxed({ title, lines }: GuidePart, size: Sizes, width: number): Block {
  const inside = stacked([
    gap(7),
    paragraph(`▲ ${title}`, 'bold', size.head, width - 20),
    gap(3),
    ...lines.map((line) => item('–', line, size.caution, width - 20)),
    gap(4),
  ])
  const { height } = inside
  const corners = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ]
  return {
    height,
    marks: [
      { kind: 'shape', points: corners, thick: 2 },
      ...beside([{ x: 10, block: inside }]).marks,
    ],
  }
}

function rowsOf({ title, about, parts, cautions }: Guide, size: Sizes, width: number): Block[] {
  return [
    paragraph(title, 'bold', size.title, width),
    gap(2),
    paragraph(about, 'regular', size.about, width),
    rule(width),
    gap(6),
    ...parts.map((each, place) => part(each, place === 0, size, width)),
    boxed(cautions, size, width),
  ]
}

/** The PDF of a guide, on one page of this paper. */
export function writeGuide(guide: Guide, paper: PaperName, madeAtMs: number): Promise<Uint8Array> {
  const width = innerWidth(paper)
  const tries = scales.map((by) =>
    paperPages(paper, [{ rows: rowsOf(guide, scaled(by), width) }], () => foot),
  )
  const pages = tries.find(({ length }) => length === 1)
  if (!pages) throw new Error(`the guide ${guide.title} does not fit one page`)
  return writePdf(pages, { title: guide.title, madeAtMs })
}
