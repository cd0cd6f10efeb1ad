/** Marks in millimetres, for a screen to draw a label at its true size. */
import type { PreviewMark } from '../../shared-types/views/printing.ts'
import { dotSize } from './barcode.ts'
import { type BarcodeMark, type Mark, pointsPerMm, type TextMark } from './mark.ts'
import { lineHeight, textWidth } from './ruler.ts'

/** Two decimals: a tenth of the smallest dot. */
const toMm = (points: number) => Math.round((points / pointsPerMm) * 100) / 100

/** The ascent of the DejaVu fonts, in parts of their line height. */
const ascent = 0.928 / 1.164

function textPreview({ x, y, text, face, size, ink }: TextMark): PreviewMark {
  return {
    is: 'text',
    x: toMm(x),
    base: toMm(y + lineHeight(size) * ascent),
    text,
    size: toMm(size),
    width: toMm(textWidth(text, face, size)),
    isBold: face === 'bold',
    isWhite: ink === 'white',
  }
}

function barsPreview({ x, y, symbol }: BarcodeMark): PreviewMark {
  const dot = dotSize(symbol.dpi)
  const dots = symbol.rects.map((rect) => ({
    x: toMm(x + rect.x * dot),
    y: toMm(y + rect.y * dot),
    width: toMm(rect.width * dot),
    height: toMm(rect.height * dot),
  }))
  return { is: 'bars', dots }
}

/** What a label shows. */
export function previewMarks(marks: readonly Mark[]): PreviewMark[] {
  return marks.map((mark): PreviewMark => {
    if (mark.kind === 'text') return textPreview(mark)
    if (mark.kind === 'barcode') return barsPreview(mark)
    const isFilled = mark.kind === 'shape' && mark.thick === 'filled'
    return {
      is: 'shape',
      points: mark.points.map(({ x, y }) => ({ x: toMm(x), y: toMm(y) })),
      isFilled,
      isOpen: mark.kind === 'line',
      thick: mark.thick === 'filled' ? 0 : toMm(mark.thick),
    }
  })
}
