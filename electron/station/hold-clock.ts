/**
 * The hold clock: how long a fresh sample has been chilled, against the limit after which it must be
 * frozen or delivered. Chill what will be delivered within about two days, freeze the rest
 * (common practice, no source); each station sets its own limit with its laboratory.
 */
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
