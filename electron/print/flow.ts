/** Fills pages, or the labels of a strip, from top to bottom with rows that are never torn apart. */
import { type Mark, shifted } from './mark.ts'

/** Marks within a strip `height` points tall, placed from its own top left corner. */
export interface Block {
  readonly height: number
  readonly marks: readonly Mark[]
}

/** Rows under an optional head, which is repeated where the rows run on to the next page. */
export interface Section<Row extends Block = Block> {
  readonly head?: Block
  readonly rows: readonly Row[]
}

export interface FilledPage<Row extends Block = Block> {
  readonly marks: readonly Mark[]
  readonly rows: readonly Row[]
  /** Points used from the top of the frame. */
  readonly used: number
}

interface OpenPage<Row extends Block> {
  marks: Mark[]
  rows: Row[]
  used: number
}

function place(page: OpenPage<Block>, block: Block): void {
  page.marks.push(...shifted(block.marks, 0, page.used))
  page.used += block.height
}

/**
 * The sections on as many pages as they need, each `height` points tall; undefined when a single
 * row with its head is taller than that. Gives one empty page for no rows at all.
 */
export function filledPages<Row extends Block>(
  sections: readonly Section<Row>[],
  height: number,
): FilledPage<Row>[] | undefined {
  let page: OpenPage<Row> = { marks: [], rows: [], used: 0 }
  const pages = [page]
  for (const { head, rows } of sections) {
    let headed = false
    for (const row of rows) {
      const headHeight = head?.height ?? 0
      if (headHeight + row.height > height) return undefined
      if (page.used + row.height + (headed ? 0 : headHeight) > height) {
        page = { marks: [], rows: [], used: 0 }
        pages.push(page)
        headed = false
      }
      if (head && !headed) place(page, head)
      headed = true
      place(page, row)
      page.rows.push(row)
    }
  }
  return pages
}

/** Blocks one under the other as a single one that is never torn apart. */
export function stacked(blocks: readonly Block[]): Block {
  const page: OpenPage<Block> = { marks: [], rows: [], used: 0 }
  for (const block of blocks) place(page, block)
  return { height: page.used, marks: page.marks }
}

/** Blocks side by side, each starting at its own distance from the left. */
export function beside(blocks: readonly { readonly x: number; readonly block: Block }[]): Block {
  return {
    height: Math.max(0, ...blocks.map(({ block }) => block.height)),
    marks: blocks.flatMap(({ x, block }) => shifted(block.marks, x, 0)),
  }
}

/** Nothing, `height` points of it. */
export function gap(height: number): Block {
  return { height, marks: [] }
}
