import type { PreviewMark, PreviewView } from '../../shared-types/views/printing.ts'

type LabelShown = PreviewView['labels'][number]

/** One label drawn as it is printed, `scale` times its size on this screen. */
export function LabelPreview(props: {
  label: LabelShown
  widthMm: number
  heightMm: number
  scale: number
}) {
  const { label, widthMm, heightMm, scale } = props
  return (
    <svg
      className="label-preview"
      role="img"
      aria-label={label.words}
      viewBox={`0 0 ${widthMm} ${heightMm}`}
      style={{ width: `${widthMm * scale}mm`, height: `${heightMm * scale}mm` }}
    >
      {label.marks.map((mark, place) => (
        <MarkShown key={place} mark={mark} />
      ))}
    </svg>
  )
}

function MarkShown({ mark }: { readonly mark: PreviewMark }) {
  if (mark.is === 'text')
    return (
      <text
        x={mark.x}
        y={mark.base}
        fontSize={mark.size}
        fontWeight={mark.isBold ? 700 : 400}
        fill={mark.isWhite ? '#fff' : '#000'}
        textLength={mark.width}
        lengthAdjust="spacingAndGlyphs"
      >
        {mark.text}
      </text>
    )
  if (mark.is === 'bars')
    return mark.dots.map((dot) => (
      <rect key={`${dot.x} ${dot.y}`} {...dot} fill="#000" shapeRendering="crispEdges" />
    ))
  const points = mark.points.map(({ x, y }) => `${x},${y}`).join(' ')
  if (mark.isFilled) return <polygon points={points} fill="#000" />
  const line = { points, fill: 'none', stroke: '#000', strokeWidth: mark.thick }
  return mark.isOpen ? <polyline {...line} /> : <polygon {...line} />
}
