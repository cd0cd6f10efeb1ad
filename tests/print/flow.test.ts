import { describe, expect, test } from 'vitest'
import { type Block, filledPages } from '../../electron/print/flow.ts'
import { textMark } from '../../electron/print/mark.ts'

function row(word: string, height = 10): Block {
  return { height, marks: [textMark(0, 0, word, 'regular', 8)] }
}

function layout(pages: ReturnType<typeof filledPages>) {
  return pages?.map(({ marks }) =>
    marks.map((mark) => (mark.kind === 'text' ? `${mark.text} ${mark.y}` : '')),
  )
}

describe('rows on pages', () => {
  test('follow one another from the top', () => {
    expect(layout(filledPages([{ rows: [row('a'), row('b')] }], 30))).toEqual([['a 0', 'b 10']])
  })

  test('move whole to the next page, under the head once more', () => {
    const pages = filledPages([{ head: row('head', 5), rows: [row('a'), row('b'), row('c')] }], 25)
    expect(layout(pages)).toEqual([
      ['head 0', 'a 5', 'b 15'],
      ['head 0', 'c 5'],
    ])
  })

  test('never leave a head alone at the foot of a page', () => {
    const pages = filledPages(
      [{ rows: [row('a'), row('b')] }, { head: row('head', 5), rows: [row('c')] }],
      30,
    )
    expect(layout(pages)).toEqual([
      ['a 0', 'b 10'],
      ['head 0', 'c 5'],
    ])
  })

  test('fill a page to its last point', () => {
    expect(filledPages([{ rows: [row('a'), row('b')] }], 20)).toHaveLength(1)
  })

  test('taller than a page are refused', () => {
    expect(filledPages([{ rows: [row('a', 31)] }], 30)).toBeUndefined()
    expect(filledPages([{ head: row('head', 5), rows: [row('a', 26)] }], 30)).toBeUndefined()
  })
})
