import { useEffect, useRef } from 'react'
import SignaturePad from 'signature_pad'
import { Button } from '../parts/button.tsx'
import { type Point, normaliseStrokes } from './strokes.ts'

/** Paper and ink stay the same by night: the manifest prints them so. */
const ink = '#1d2430'

/** A field three times as wide as high to write a name on. */
export function SignatureField(props: { label: string; onStrokes: (strokes: Point[][]) => void }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const pad = useRef<SignaturePad>(null)
  const { onStrokes } = props
  const latest = useRef(onStrokes)
  useEffect(() => {
    latest.current = onStrokes
  })
  useEffect(() => {
    if (canvas.current === null) return
    const field = canvas.current
    sharpen(field)
    const drawing = new SignaturePad(field, { penColor: ink })
    pad.current = drawing
    drawing.addEventListener('endStroke', () => {
      const { clientWidth: width, clientHeight: height } = field
      const strokes = drawing.toData().map(({ points }) => points)
      latest.current(normaliseStrokes(strokes, { width, height }))
    })
    return () => drawing.off()
  }, [])
  return (
    <>
      <canvas
        ref={canvas}
        className="handoff-signature-field"
        role="img"
        aria-label={`${props.label} here`}
      />
      <div className="row">
        <Button
          onPress={() => {
            pad.current?.clear()
            onStrokes([])
          }}
        >
          Wipe and write again
        </Button>
      </div>
    </>
  )
}

/** Gives the canvas the screen's own pixels, so that the line is not blurred. */
function sharpen(canvas: HTMLCanvasElement): void {
  const ratio = Math.max(1, window.devicePixelRatio)
  canvas.width = canvas.clientWidth * ratio
  canvas.height = canvas.clientHeight * ratio
  canvas.getContext('2d')?.scale(ratio, ratio)
}
