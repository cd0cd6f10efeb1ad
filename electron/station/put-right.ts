/** Putting the kit ledger right to what was counted, once the lead signs. */
import { type CountItem, type VarianceReason, varianceWords } from '../../shared-types/close.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import type { KitAccount } from '../../shared-types/kit.ts'
import type { CloseItem } from '../../shared-types/views/close.ts'

interface KitVariance {
  readonly account: KitAccount
  readonly variance: number
  readonly reason: VarianceReason
}

function kitVariances(items: readonly CloseItem[]): KitVariance[] {
  return items.flatMap(({ item, variance, explained }): KitVariance[] => {
    const account = kitAccountOf(item)
    return account && variance && explained ? [{ account, variance, reason: explained.reason }] : []
  })
}

function kitAccountOf(item: CountItem): KitAccount | null {
  if (item.of === 'kits-in-stock') return { in: 'stock' }
  return item.of === 'kits-in-hand' ? { in: 'hands', person: item.person } : null
}

/** Where kits that are short have gone, for all that is known; null where they still are. */
function whereTo(reason: VarianceReason): KitAccount | null {
  // Whoever took them home still has them: they are counted again until they come back.
  if (reason === 'not-given-back') return null
  if (reason === 'spoiled-not-recorded') return { in: 'spoiled' }
  if (reason === 'other-desk') return { in: 'other-desk' }
  return reason === 'wrong-opening-count' ? { in: 'delivered' } : { in: 'missing' }
}

/** Kits over that no missing one accounts for. */
function whence(reason: VarianceReason): KitAccount {
  return reason === 'other-desk' ? { in: 'other-desk' } : { in: 'delivered' }
}

/** Reasons for kits over that have nothing to do with those written off as missing. */
const notFound: readonly VarianceReason[] = ['wrong-opening-count', 'other-desk']

function moved(
  from: KitAccount,
  to: KitAccount,
  count: number,
  reason: VarianceReason,
): EntryDraft[] {
  if (count === 0) return []
  return [draft('kits.moved', { from, to, count, reason: `close: ${varianceWords[reason]}` })]
}

/**
 * The ledger moves that a signed close makes, so that tomorrow starts from what was counted. Kits short
 * go first: those over then come out of what is missing, and beyond that were never counted in.
 */
export function ledgerPutRight(
  view: { readonly kitsMissing: number },
  items: readonly CloseItem[],
): EntryDraft[] {
  const variances = kitVariances(items)
  const short = variances.flatMap((each) => {
    const to = whereTo(each.reason)
    return each.variance < 0 && to ? [{ ...each, to }] : []
  })
  const over = variances.filter(({ variance }) => variance > 0)
  let missing = short
    .filter(({ to }) => to.in === 'missing')
    .reduce((sum, { variance }) => sum - variance, view.kitsMissing)
  return [
    ...short.flatMap(({ account, to, variance, reason }) => moved(account, to, -variance, reason)),
    ...over.flatMap(({ account, variance, reason }) => {
      const found = notFound.includes(reason) ? 0 : Math.min(variance, missing)
      missing -= found
      return [
        ...moved({ in: 'missing' }, account, found, reason),
        ...moved(whence(reason), account, variance - found, reason),
      ]
    }),
  ]
}
