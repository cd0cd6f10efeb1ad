/** What the log knows, for checking a laboratory's file against it. */
import type { ReadableLog } from '../../../db/connection.ts'
import { bagSeenByLaboratory } from '../../../db/read/results.ts'
import { stationsIn } from '../../../db/read/station.ts'
import type { BagNumber } from '../../../shared-types/sample-number.ts'
import { localDate } from '../../station/local-time.ts'
import type { KnownBag, RecordSeen } from '../../station/results/result-check.ts'

/** Reads bags one by one; the day each was sealed is reckoned once for each hour, not for each bag. */
export function recordSeen(log: ReadableLog, zone: string, now: number): RecordSeen {
  const days = new Map<number, ReturnType<typeof localDate>>()
  const dayOf = (ms: number) => {
    const hour = Math.floor(ms / 3_600_000)
    const known = days.get(hour)
    if (known) return known
    const day = localDate(hour * 3_600_000, zone)
    days.set(hour, day)
    return day
  }
  const seasons = new Set(stationsIn(log).map(({ desk }) => desk.slice(0, 2)))
  return {
    seasons,
    today: localDate(now, zone),
    bagOf: (bag: BagNumber): KnownBag | null => {
      const row = bagSeenByLaboratory(log, { bag })
      if (!row) return null
      const { animal, place, seen, sealed_ms, word, method, tested } = row
      const latest = word === null ? null : { word, method: method ?? '', tested }
      return { animal, place, seen, sealed: dayOf(sealed_ms), latest }
    },
  }
}
