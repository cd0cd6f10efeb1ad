/** Measures laid-out pages: what sticks out, and what lies over what. */
import { symbolSize } from '../../electron/print/barcode.ts'
import type { Mark, Page } from '../../electron/print/mark.ts'
import { lineHeight, textWidth } from '../../electron/print/ruler.ts'

interface Box {
  readonly what: string
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

function box(mark: Mark): Box {
  if (mark.kind === 'text') {
    const right = mark.x + textWidth(mark.text, mark.face, mark.size)
    const bottom = mark.y + lineHeight(mark.size)
    return { what: mark.text, left: mark.x, top: mark.y, right, bottom }
  }
  if (mark.kind === 'barcode') {
    const { width, height } = symbolSize(mark.symbol)
    const what = `barcode ${mark.symbol.text}`
    return { what, left: mark.x, top: mark.y, right: mark.x + width, bottom: mark.y + height }
  }
  const xs = mark.points.map(({ x }) => x)
  const ys = mark.points.map(({ y }) => y)
  return {
    what: mark.kind,
    left: Math.min(...xs),
    top: Math.min(...ys),
    right: Math.max(...xs),
    bottom: Math.max(...ys),
  }
}

/** Rounding of the dot grid. */
const slack = 0.4

/** Whatever reaches beyond the page. */
export function stickingOut({ width, height, marks }: Page): string[] {
  return marks
    .map(box)
    .filter(
      ({ left, top, right, bottom }) =>
        left < -slack || top < -slack || right > width + slack || bottom > height + slack,
    )
    .map(({ what }) => what)
}

/** Words and barcodes, quiet zones included, that lie over each other. */
export function overlaps({ marks }: Page): string[] {
  const boxes = marks.filter(({ kind }) => kind === 'text' || kind === 'barcode').map(box)
  return boxes.flatMap((a, place) =>
    boxes
      .slice(place + 1)
      .filter(
        (b) =>
          a.left < b.right - slack &&
          b.left < a.right - slack &&
          a.top < b.bottom - slack &&
          b.top < a.bottom - slack,
      )
      .map((b) => `${a.what} / ${b.what}`),
  )
}
