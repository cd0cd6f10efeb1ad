/** A drawn signature on its way to the desk: from a canvas in pixels to a field of 0 to 1. */

export interface Point {
  readonly x: number
  readonly y: number
}

/** What the desk keeps at most, and what is plenty for a name written by hand. */
const mostStrokes = 200
const mostPoints = 2000

/**
 * Brings strokes drawn on a field of `width` by `height` pixels to 0..1 on both axes.
 * A point drawn past the rim lies on the rim; a stroke of too many points is thinned evenly.
 */
export function normaliseStrokes(
  strokes: readonly (readonly Point[])[],
  field: { readonly width: number; readonly height: number },
): Point[][] {
  return strokes
    .slice(0, mostStrokes)
    .map((stroke) =>
      thinned(stroke).map(({ x, y }) => ({ x: share(x, field.width), y: share(y, field.height) })),
    )
}

function share(place: number, size: number): number {
  return Math.round(Math.min(1, Math.max(0, place / size)) * 10_000) / 10_000
}

function thinned(stroke: readonly Point[]): readonly Point[] {
  const step = Math.ceil(stroke.length / mostPoints)
  return step <= 1 ? stroke : stroke.filter((_, index) => index % step === 0)
}
