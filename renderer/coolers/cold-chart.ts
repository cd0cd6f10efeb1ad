/** Where the points of a temperature chart lie. Pure: the drawing only draws. */
import type { ColdView } from '../../shared-types/views/cold.ts'

export const chartSize = { width: 640, height: 220, left: 52, right: 8, top: 10, bottom: 26 }

export interface ChartPlan {
  readonly x: (ms: number) => number
  readonly y: (celsius: number) => number
  readonly fromMs: number
  readonly toMs: number
  /** Runs of readings without a gap between them, as points of a line. */
  readonly lines: readonly string[]
}

/** Null without readings. A single reading gets an hour to stand in. */
export function planChart({ points, gaps, limits }: ColdView): ChartPlan | null {
  const [first] = points
  const last = points.at(-1)
  if (!first || !last) return null
  const { width, height, left, right, top, bottom } = chartSize
  const toMs = last.ms > first.ms ? last.ms : first.ms + 3_600_000
  const degrees = [limits.low, limits.high, ...points.map(({ celsius }) => celsius)]
  const low = Math.min(...degrees) - 1
  const high = Math.max(...degrees) + 1
  const x = (ms: number) => left + ((ms - first.ms) / (toMs - first.ms)) * (width - left - right)
  const y = (celsius: number) => top + ((high - celsius) / (high - low)) * (height - top - bottom)
  const starts = new Set(gaps.map((gap) => gap.toMs))
  const lines: string[][] = []
  for (const { ms, celsius } of points) {
    if (lines.length === 0 || starts.has(ms)) lines.push([])
    lines.at(-1)?.push(`${x(ms).toFixed(1)},${y(celsius).toFixed(1)}`)
  }
  return { x, y, fromMs: first.ms, toMs, lines: lines.map((line) => line.join(' ')) }
}
