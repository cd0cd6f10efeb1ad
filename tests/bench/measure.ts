/** Timing two things side by side, so that a figure means the same on a fast and a slow machine. */

/** Milliseconds of each run, sorted. */
export interface Timing {
  readonly p50: number
  readonly p95: number
}

function timingOf(samples: number[]): Timing {
  const sorted = samples.toSorted((a, b) => a - b)
  const at = (share: number) => sorted[Math.floor((sorted.length - 1) * share)] ?? 0
  return { p50: at(0.5), p95: at(0.95) }
}

type Work = (run: number) => unknown

async function timed(work: Work, run: number): Promise<number> {
  const start = performance.now()
  await work(run)
  return performance.now() - start
}

/** Runs both works in turn, so that whatever else the machine does hits both alike. */
export async function sideBySide(
  runs: number,
  ours: Work,
  baseline: Work,
): Promise<{ ours: Timing; baseline: Timing }> {
  const samples = { ours: [] as number[], baseline: [] as number[] }
  const warmUp = Math.ceil(runs / 10)
  for (let run = 0; run < runs + warmUp; run += 1) {
    const [b, o] = [await timed(baseline, run), await timed(ours, run)]
    if (run < warmUp) continue
    samples.baseline.push(b)
    samples.ours.push(o)
  }
  return { ours: timingOf(samples.ours), baseline: timingOf(samples.baseline) }
}

/** Times one work alone. */
export async function alone(runs: number, work: Work): Promise<Timing> {
  const samples: number[] = []
  for (let run = 0; run < runs; run += 1) samples.push(await timed(work, run))
  return timingOf(samples)
}

export interface Figure {
  readonly what: string
  readonly figure: string
  readonly target: string
  readonly met: boolean | null
}

export const ms = (value: number) => `${value.toFixed(value < 10 ? 2 : 0)} ms`
