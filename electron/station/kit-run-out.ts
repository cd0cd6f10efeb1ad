/** Whether the kits last: against what the rest of the day will need, for the station and each sampler. */
import { chanceAtMost, type Demand, stockFor } from './demand.ts'

/** Enough means enough on this share of days. */
export const enoughShare = 0.95
/** Kits are handed out for about this long: hands hold no more, and torn kits are found sooner. */
export const handOutMinutes = 120

/** Arrivals still to come that need a kit, by minutes from now. */
export interface KitNeed {
  /** Animals here that have no kit opened yet: they need one for certain. */
  readonly certain: number
  /** Those that come within so many minutes from now and are sampled. */
  readonly comingWithin: (minutes: number) => Demand
  readonly minutesToClose: number
}

export interface KitOutlook {
  readonly kits: number
  /** Chance that they last until the close. */
  readonly chance: number
  /** Minutes from now at which they no longer cover 95 of 100 days; null when they do to the close. */
  readonly shortAfter: number | null
  /** Kits that 95 of 100 such days need until the close. */
  readonly enough: number
}

/** The outlook of so many kits, by steps of five minutes. */
export function kitOutlook(kits: number, need: KitNeed): KitOutlook {
  const left = kits - need.certain
  const toClose = need.comingWithin(need.minutesToClose)
  return {
    kits,
    chance: chanceAtMost(toClose, left),
    shortAfter: shortAfter(left, need),
    enough: need.certain + stockFor(toClose, enoughShare),
  }
}

const stepMinutes = 5

/** The need only grows with time, so the moment is found by halving. */
function shortAfter(left: number, { comingWithin, minutesToClose }: KitNeed): number | null {
  const isShort = (minutes: number) => chanceAtMost(comingWithin(minutes), left) < enoughShare
  if (isShort(0)) return 0
  if (!isShort(minutesToClose)) return null
  let [low, high] = [0, Math.ceil(minutesToClose / stepMinutes)]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (isShort(middle * stepMinutes)) high = middle
    else low = middle
  }
  return high * stepMinutes
}

/** A sampler with the part of the work that falls to them, and how many animals they can do an hour. */
export interface KitHolder<Who> {
  readonly who: Who
  readonly kits: number
  readonly share: number
  readonly perHour: number
}

/** The need of one holder: their part of those here and to come, but no more than they can work. */
export function needOfHolder(
  { share, perHour }: Pick<KitHolder<unknown>, 'share' | 'perHour'>,
  need: KitNeed,
): KitNeed {
  return {
    certain: 0,
    comingWithin: (minutes) => {
      const { mean, shape } = need.comingWithin(minutes)
      const part = share * (need.certain + mean)
      return { mean: Math.min(part, (perHour * minutes) / 60), shape }
    },
    minutesToClose: need.minutesToClose,
  }
}

export interface KitMove<Who> {
  readonly from: Who | 'stock'
  readonly to: Who
  readonly count: number
}

/** Kits that a holder should have in hand now. */
export function wantedInHand(
  holder: Pick<KitHolder<unknown>, 'share' | 'perHour'>,
  need: KitNeed,
): number {
  const minutes = Math.min(handOutMinutes, need.minutesToClose)
  return stockFor(needOfHolder(holder, need).comingWithin(minutes), enoughShare)
}

/**
 * Moves that give each holder what the next two hours want: from stock while it lasts, then from whoever
 * has most to spare. The neediest is served first.
 */
export function proposeMoves<Who>(
  holders: readonly KitHolder<Who>[],
  stock: number,
  need: KitNeed,
): KitMove<Who>[] {
  const spare = holders.map((holder) => holder.kits - wantedInHand(holder, need))
  const moves: KitMove<Who>[] = []
  let inStock = stock
  const neediest = holders
    .map((_, at) => at)
    .filter((at) => (spare[at] ?? 0) < 0)
    .toSorted((a, b) => (spare[a] ?? 0) - (spare[b] ?? 0))
  for (const at of neediest) {
    const to = holders[at]?.who
    if (to === undefined) continue
    const fromStock = Math.min(inStock, -(spare[at] ?? 0))
    if (fromStock > 0) {
      moves.push({ from: 'stock', to, count: fromStock })
      inStock -= fromStock
      spare[at] = (spare[at] ?? 0) + fromStock
    }
    const richest = spare.indexOf(Math.max(...spare))
    const fromRichest = Math.min(spare[richest] ?? 0, -(spare[at] ?? 0))
    const from = holders[richest]?.who
    if (fromRichest > 0 && from !== undefined) {
      moves.push({ from, to, count: fromRichest })
      spare[richest] = (spare[richest] ?? 0) - fromRichest
      spare[at] = (spare[at] ?? 0) + fromRichest
    }
  }
  return moves
}

/** Kits to ask for, so that 95 of 100 days have enough; 0 when there are. */
export function kitsToAskFor({ kits, enough }: KitOutlook): number {
  return Math.max(0, enough - kits)
}
