/** The kit ledger: double entry, so no sequence of commands makes or loses a kit. */
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import { type KitAccount, type KitRecord, kitAccountKey } from '../../shared-types/kit.ts'
import type { LabelRecord } from '../../shared-types/label.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { grouped } from '../../shared-types/sample-number.ts'

/** An account as people call it. `nameOf` gives a person's name. */
export function accountWords(account: KitAccount, nameOf: (person: string) => string): string {
  switch (account.in) {
    case 'delivered':
      return 'delivered to the station'
    case 'stock':
      return 'in stock'
    case 'hands':
      return `in hand: ${nameOf(account.person)}`
    case 'used':
      return 'used, bags still here'
    case 'spoiled':
      return 'spoiled'
    case 'sent':
      return 'used and sent'
    case 'missing':
      return 'missing'
    case 'other-desk':
      return 'at another desk of the station'
  }
}

/** Accounts that fill by themselves, as kits are used and sent. */
const byItself = ['used', 'sent']

export interface MoveView {
  readonly by: PersonRecord
  /** Kits in the account they leave. */
  readonly balance: number
  readonly nameOf: (person: string) => string
}

/** Moves kits from one account to another. Only a lead brings kits in or writes them off as missing. */
export function decideMoveKits(
  view: MoveView,
  move: { from: KitAccount; to: KitAccount; count: number; reason: string },
): Result<EntryDraft[]> {
  const { from, to, count, reason } = move
  if (kitAccountKey(from) === kitAccountKey(to))
    return refused(
      'same-account',
      'The kits are already there.',
      'Choose another place to move them to.',
      'to',
    )
  if (byItself.includes(from.in) || byItself.includes(to.in))
    return refused(
      'account-fills-itself',
      'Kits are used by opening them on an animal and sent by a handoff, never by moving them.',
      'Move kits between stock, hands, spoiled and missing only.',
      byItself.includes(from.in) ? 'from' : 'to',
    )
  const settles = [from.in, to.in].some((each) => each === 'delivered' || each === 'missing')
  if (settles && view.by.role !== 'lead')
    return refused(
      'lead-settles-kits',
      'Only the station lead takes deliveries in or writes kits off as missing.',
      'Ask the station lead.',
    )
  const between = from.in === 'other-desk' || to.in === 'other-desk'
  if ((settles || between || to.in === 'spoiled') && reason.length < 3)
    return refused(
      'reason-needed',
      'This move needs a reason.',
      'Say why in a few words.',
      'reason',
    )
  // What another desk gave is in that desk's log.
  const isOutside = from.in === 'delivered' || from.in === 'other-desk'
  if (!isOutside && view.balance < count)
    return refused(
      'not-enough-kits',
      `There ${view.balance === 1 ? 'is' : 'are'} only ${Math.max(view.balance, 0)} there (${accountWords(from, view.nameOf)}).`,
      'Move that many or fewer, or count again and correct the ledger first.',
      'count',
    )
  return granted([draft('kits.moved', { from, to, count, reason })])
}

/** A numbered kit is torn, wet or dropped: it leaves its account, and its labels are void. */
export function decideSpoilKit(
  kit: KitRecord,
  kitsInStock: number,
  labels: readonly LabelRecord[],
  reason: string,
): Result<EntryDraft[]> {
  if (kit.state === 'spoiled')
    return refused(
      'kit-already-spoiled',
      `Kit ${grouped(kit.kit)} is already recorded as spoiled.`,
      'Nothing needs doing.',
      'kit',
    )
  if (kit.state === 'opened')
    return refused(
      'kit-already-used',
      `Kit ${grouped(kit.kit)} is already opened on animal ${kit.animal ? grouped(kit.animal) : ''}.`,
      'Discard the bag that is spoiled, or reprint the label that is.',
      'kit',
    )
  if (kitsInStock < 1)
    return refused(
      'not-enough-kits',
      'The ledger holds no kit in stock that could be this one.',
      'Return the kit to stock from the hands that hold it, then record it as spoiled.',
    )
  return granted([
    draft('kit.spoiled', { kit: kit.kit, from: { in: 'stock' }, reason }),
    ...labels
      .filter(({ fate }) => fate === 'printed')
      .map(({ number, copy }) =>
        draft('label.voided', { number, copy, reason: 'kit-spoiled', words: reason }),
      ),
  ])
}

/** How long kits in hand last against the animals a sampler already holds: shape, not only colour. */
export function kitsLow(kits: number, animalsInHand: number): 'enough' | 'low' | 'none' {
  if (kits <= 0) return 'none'
  return kits <= Math.max(2, animalsInHand) ? 'low' : 'enough'
}
