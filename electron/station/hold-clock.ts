/**
 * The hold clock: how long a fresh sample has been chilled, against the limit after which it must be
 * frozen or delivered. Chill what will be delivered within about two days, freeze the rest
 * (common practice, no source); each station sets its own limit with its laboratory.
 */
import type { BagNumber, CoolerNumber } from '../../shared-types/sample-number.ts'
import type { Keeping, StationSettings } from '../../shared-types/station.ts'
import type { BagRecord } from '../../shared-types/tissue.ts'

const hourMs = 3_600_000

/**
 * When a sample must be frozen or delivered, in wall milliseconds; null when the clock does not run:
 * frozen tissue keeps, and tissue in formalin is at room temperature. On the bench the clock runs.
 */
export function holdUntilMs(
  settings: Pick<StationSettings, 'holdHours'>,
  bag: Pick<BagRecord, 'kept' | 'sealedMs'>,
  keeping: Keeping | null,
): number | null {
  if (bag.kept === 'formalin' || keeping === 'frozen') return null
  return bag.sealedMs + settings.holdHours * hourMs
}

/** A clock that was put back: what the log had reached, and what the clock read when it was accepted. */
export interface ClockPutBack {
  readonly wallMs: number
  readonly lastMs: number
}

/**
 * When the hold clock of a bag began. A bag sealed later than the clock that a lead accepted afterwards was
 * sealed under a clock that ran ahead: by at least what it was put back. Daylight saving needs no care,
 * because wall milliseconds have none.
 */
export function sealedBy(sealedMs: number, putBack: readonly ClockPutBack[]): number {
  return putBack.reduce(
    (ms, { wallMs, lastMs }) => (ms > wallMs && ms <= lastMs ? ms - (lastMs - wallMs) : ms),
    sealedMs,
  )
}

/** A thing with a hold limit: the bags on the bench, or those of a cooler. */
export interface Held {
  readonly cooler: CoolerNumber | null
  readonly name: string
  readonly bags: readonly { readonly bag: BagNumber; readonly untilMs: number | null }[]
}

/** What must be frozen or delivered next, the most urgent first; bags due within the hour stand together. */
export function holdLine(held: readonly Held[], nowMs: number) {
  return held
    .flatMap((each) => {
      const timed = each.bags.flatMap(({ bag, untilMs }) =>
        untilMs === null ? [] : [{ bag, untilMs }],
      )
      const first = Math.min(...timed.map(({ untilMs }) => untilMs))
      if (timed.length === 0) return []
      const due = timed.filter(({ untilMs }) => untilMs <= first + hourMs)
      return [
        {
          of: each,
          untilMs: first,
          isLate: first <= nowMs,
          bags: due.map(({ bag }) => bag),
          running: timed.length,
          lastMs: Math.max(...due.map(({ untilMs }) => untilMs)),
        },
      ]
    })
    .toSorted((a, b) => a.untilMs - b.untilMs)
}
