/** Tables in black on white: a title, column heads repeated on each page, a hairline under each row. */
import { type Block, type Section, beside, gap, stacked } from './flow.ts'
import { type Face, type Mark, ruleMark, textMark } from './mark.ts'
import { lineHeight, textWidth, wrapped } from './ruler.ts'
import { paragraph } from './text-block.ts'

export interface Column {
  readonly title: string
  /** Part of the table's width; the shares of all columns add up to 1. */
  readonly share: number
  readonly align?: 'right'
}

export interface TableRow {
  readonly cells: readonly string[]
  /** A row that must not be overlooked. */
  readonly bold?: boolean
}

export interface TableStyle {
  readonly width: number
  readonly size: number
}

const gutter = 10
/** A cell longer than this goes on in a row of its own, so that every row fits a page. */
const mostLines = 20

function cellLines(text: string, column: Column, face: Face, style: TableStyle): string[] {
  return wrapped(text, face, style.size, column.share * style.width - gutter)
}

function cellMarks(
  lines: readonly string[],
  column: Column,
  face: Face,
  style: TableStyle,
): Mark[] {
  return lines.map((line, place) => {
    const room = column.share * style.width - gutter
    const x = column.align === 'right' ? room - textWidth(line, face, style.size) : 0
    return textMark(x, place * lineHeight(style.size), line, face, style.size)
  })
}

function lineOfCells(
  cells: readonly (readonly string[])[],
  columns: readonly Column[],
  face: Face,
  style: TableStyle,
): Block {
  let x = 0
  const blocks = columns.map((column, place) => {
    const lines = cells[place] ?? []
    const block = {
      height: lines.length * lineHeight(style.size),
      marks: cellMarks(lines, column, face, style),
    }
    const placed = { x, block }
    x += column.share * style.width
    return placed
  })
  return beside(blocks)
}

function underlined(block: Block, width: number, thick: number): Block {
  const height = block.height + 3.5
  return { height, marks: [...block.marks, ruleMark(0, height - 1.75, width, thick)] }
}

/** One row; a row with a very long cell comes as several blocks. */
export function rowBlocks(
  { cells, bold }: TableRow,
  columns: readonly Column[],
  style: TableStyle,
): Block[] {
  const face: Face = bold ? 'bold' : 'regular'
  const lines = columns.map((column, place) => cellLines(cells[place] ?? '', column, face, style))
  const parts = Math.ceil(Math.max(1, ...lines.map((each) => each.length)) / mostLines)
  return Array.from({ length: parts }, (_, part) => {
    const slice = lines.map((each) => each.slice(part * mostLines, (part + 1) * mostLines))
    return underlined(lineOfCells(slice, columns, face, style), style.width, 0.3)
  })
}

/** Title and column heads. */
export function tableHead(title: string, columns: readonly Column[], style: TableStyle): Block {
  const heads = columns.map((column) => cellLines(column.title, column, 'bold', style))
  return stacked([
    gap(7),
    paragraph(title, 'bold', style.size + 2, style.width),
    gap(2),
    underlined(lineOfCells(heads, columns, 'bold', style), style.width, 1),
  ])
}

/** A table, or its title and `none` where there are no rows. */
export function tableSection(
  title: string,
  columns: readonly Column[],
  rows: readonly TableRow[],
  none: string,
  style: TableStyle,
): Section {
  if (rows.length > 0)
    return {
      head: tableHead(title, columns, style),
      rows: rows.flatMap((row) => rowBlocks(row, columns, style)),
    }
  const line = `${title}: ${none}`
  return {
    rows: [stacked([gap(7), paragraph(line, 'regular', style.size, style.width)])],
  }
}
