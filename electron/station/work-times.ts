/** What the day's work says about how long work takes. */
import type { AnimalFacts } from '../../shared-types/animal.ts'
import type { WorkTime } from './service-time.ts'
import { workKindOf } from './service-time.ts'

/** An animal that a sampler has taken. */
export interface Worked extends Pick<AnimalFacts, 'species' | 'head'> {
  readonly sampler: string
  readonly arrivedMs: number
  readonly assignedMs: number
  /** Null while it is in hand. */
  readonly finishedMs: number | null
}

const minuteMs = 60_000

/**
 * Minutes of work and between work of each sampler. Work on one of several animals in hand begins when
 * the one before is finished; the time between two counts from when there was somebody to call.
 */
export function workTimes(worked: readonly Worked[]): WorkTime[] {
  const bySampler = new Map<string, Worked[]>()
  for (const each of worked)
    bySampler.set(each.sampler, [...(bySampler.get(each.sampler) ?? []), each])
  return [...bySampler.values()].flatMap(timesOfOne)
}

function timesOfOne(worked: readonly Worked[]): WorkTime[] {
  const inOrder = worked.toSorted((a, b) => a.assignedMs - b.assignedMs)
  return inOrder.flatMap((each, place) => {
    const { sampler, assignedMs, arrivedMs, finishedMs } = each
    const before = inOrder[place - 1]?.finishedMs ?? null
    const times: WorkTime[] = []
    if (before !== null && assignedMs >= before) {
      const wasIdle = arrivedMs > before
      const minutes = (assignedMs - Math.max(before, arrivedMs)) / minuteMs
      times.push({ sampler, kind: wasIdle ? 'calling' : 'between', minutes })
    }
    if (finishedMs === null) return times
    const begun = Math.max(assignedMs, before ?? assignedMs)
    if (finishedMs > begun)
      times.push({ sampler, kind: workKindOf(each), minutes: (finishedMs - begun) / minuteMs })
    return times
  })
}
