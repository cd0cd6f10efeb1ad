/**
 * Reconciliation: what the log expects beside what people counted. The close is signed only when every
 * thing is counted, every variance explained, and no animal or bag is left in between.
 */
import { type CountItem, countItemKey, type VarianceReason } from '../../shared-types/close.ts'
import type { CoolerRecord } from '../../shared-types/cooler.ts'
import { draft, type EntryBody, type EntryDraft } from '../../shared-types/entry.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { BagNumber, CoolerNumber } from '../../shared-types/sample-number.ts'
import type { DayRecord } from '../../shared-types/station.ts'
import type { CloseItem } from '../../shared-types/views/close.ts'
import type { Need } from '../../shared-types/views/common.ts'
import type { DayTotals } from '../../shared-types/views/line.ts'
import { ledgerPutRight } from './put-right.ts'
import { checkSigners, type Signers } from './signers.ts'

/** What the log holds at dusk. */
export interface DuskView {
  readonly totals: DayTotals
  /** Animals waiting or with a sampler, also those that first came on an earlier day. */
  readonly animalsInLine: number
  readonly coolers: readonly (CoolerRecord & { readonly bags: number })[]
  readonly bagsOnBench: number
  readonly kitsInStock: number
  /** Kits written off before, which may turn up again. */
  readonly kitsMissing: number
  readonly kitsInHand: readonly { readonly person: PersonRecord; readonly kits: number }[]
  readonly blankLabels: number
  readonly unusedLabels: number
  readonly counts: ReadonlyMap<string, Count>
  /** What the log has in a cooler, asked only where its bags were scanned. */
  readonly bagsIn: (cooler: CoolerNumber) => readonly BagNumber[]
  readonly explanations: ReadonlyMap<
    string,
    { expected: number; counted: number; reason: VarianceReason; words: string }
  >
}

/** A count as it stands; `bags` where a cooler was counted by scanning each. */
export interface Count {
  readonly counted: number
  readonly bags: readonly BagNumber[] | null
}

interface Expected {
  readonly item: CountItem
  readonly expected: number
}

/** A thing to count, in words. `nameOf` gives the name of a cooler or person. */
export function itemWords(item: CountItem, nameOf: (number: string) => string): string {
  switch (item.of) {
    case 'animals':
      return 'Animals checked in today'
    case 'bags':
      return `Bags in cooler ${nameOf(item.cooler)}`
    case 'kits-in-stock':
      return 'Kits in stock'
    case 'kits-in-hand':
      return `Kits in hand: ${nameOf(item.person)}`
    case 'blank-labels':
      return 'Blank labels left'
    case 'unused-kit-labels':
      return 'Printed labels not used'
  }
}

/** Everything that is counted at dusk and what the log expects of it. */
export function expectedAtDusk(view: DuskView): Expected[] {
  return [
    { item: { of: 'animals' }, expected: view.totals.checkedIn },
    ...view.coolers
      .filter(({ state }) => state !== 'handed-off')
      .map(({ cooler, bags }) => ({ item: { of: 'bags', cooler } as const, expected: bags })),
    { item: { of: 'kits-in-stock' }, expected: view.kitsInStock },
    ...view.kitsInHand.map(({ person, kits }) => ({
      item: { of: 'kits-in-hand', person: person.person } as const,
      expected: kits,
    })),
    { item: { of: 'blank-labels' }, expected: view.blankLabels },
    { item: { of: 'unused-kit-labels' }, expected: view.unusedLabels },
  ]
}

/** The counts beside what was expected. An item nobody counted yet does not show its expectation. */
export function closeItems(view: DuskView): CloseItem[] {
  const names = new Map<string, string>([
    ...view.coolers.map(({ cooler, name }) => [cooler, name] as const),
    ...view.kitsInHand.map(({ person }) => [person.person, person.name] as const),
  ])
  return expectedAtDusk(view).map((each): CloseItem => {
    const words = itemWords(each.item, (number) => names.get(number) ?? number)
    return { ...beside(view, each), words, tries: [], causes: [] }
  })
}

function beside(
  view: DuskView,
  { item, expected }: Expected,
): Omit<CloseItem, 'words' | 'tries' | 'causes'> {
  const key = countItemKey(item)
  const count = view.counts.get(key)
  const hidden = { counted: null, expected: null, variance: null, scanned: null, explained: null }
  if (!count) return { key, item, ...hidden }
  const { counted } = count
  const given = view.explanations.get(key)
  const holds = given !== undefined && given.expected === expected && given.counted === counted
  return {
    key,
    item,
    counted,
    expected,
    variance: counted - expected,
    scanned:
      item.of === 'bags' && count.bags ? scanned(view.bagsIn(item.cooler), count.bags) : null,
    explained: holds ? { reason: given.reason, words: given.words } : null,
  }
}

/** The bags that are not where the log has them, and those that are where it has them not. */
function scanned(inLog: readonly BagNumber[], found: readonly BagNumber[]): CloseItem['scanned'] {
  const [log, here] = [new Set(inLog), new Set(found)]
  return {
    missing: inLog.filter((bag) => !here.has(bag)),
    extra: found.filter((bag) => !log.has(bag)),
  }
}

/** Whether a count differs from the log: in number, or in which bags there are. */
export function differs({ variance, scanned }: CloseItem): boolean {
  const bags = scanned ? scanned.missing.length + scanned.extra.length : 0
  return (variance ?? 0) !== 0 || bags > 0
}

/**
 * A count that cannot be: over ten times what the log has (and over a hundred). Asked once more, since
 * a scanned number or a slipped key looks like a count.
 */
export function isAbsurd(expected: number, counted: number): boolean {
  return counted > 10 * Math.max(expected, 10)
}

/** The items of a signed close, as they were signed. */
export function signedItems(
  sheet: EntryBody<'day.closed'>,
  nameOf: (number: string) => string,
): CloseItem[] {
  return sheet.items.map(({ item, expected, counted, reason, words }) => ({
    key: countItemKey(item),
    item,
    words: itemWords(item, nameOf),
    counted,
    expected,
    variance: counted - expected,
    scanned: null,
    explained: reason === null ? null : { reason, words },
    tries: [],
    causes: [],
  }))
}

/** What stands in the way of signing, the hardest first. */
export function needsBeforeClose(view: DuskView, items: readonly CloseItem[]): Need[] {
  const needs: Need[] = []
  const open = view.animalsInLine
  if (open > 0)
    needs.push({
      code: 'animals-still-open',
      urgent: true,
      say: `${open} ${open === 1 ? 'animal is' : 'animals are'} still waiting or with a sampler.`,
      next: 'Finish each, or record that its hunter left.',
      screen: 'line',
    })
  if (view.bagsOnBench > 0)
    needs.push({
      code: 'bags-on-bench',
      urgent: true,
      say: `${view.bagsOnBench} sealed ${view.bagsOnBench === 1 ? 'bag is' : 'bags are'} in no cooler.`,
      next: 'Scan each into a cooler.',
      screen: 'coolers',
    })
  const uncounted = items.filter(({ counted }) => counted === null).length
  if (uncounted > 0)
    needs.push({
      code: 'not-counted',
      urgent: false,
      say: `${uncounted} of ${items.length} things are not counted yet.`,
      next: 'Count each and type the number.',
      screen: 'close',
    })
  const unexplained = items.filter((each) => differs(each) && !each.explained).length
  if (unexplained > 0)
    needs.push({
      code: 'variance-unexplained',
      urgent: true,
      say: `${unexplained} ${unexplained === 1 ? 'variance has' : 'variances have'} no reason yet.`,
      next: 'Count again, or give the reason.',
      screen: 'close',
    })
  return needs
}

/** Explains a variance. The ledger is put right when the lead signs, not before. */
export function decideExplain(
  date: DayRecord['date'],
  items: readonly CloseItem[],
  explanation: { item: CountItem; reason: VarianceReason; words: string },
): Result<EntryDraft[]> {
  const key = countItemKey(explanation.item)
  const found = items.find((each) => each.key === key)
  if (!found)
    return refused(
      'not-on-the-list',
      'That is not counted at this close.',
      'Choose a thing on the list.',
      'item',
    )
  if (found.counted === null || found.expected === null)
    return refused('count-first', `${found.words}: not counted yet.`, 'Count it first.', 'item')
  if (!differs(found))
    return refused(
      'no-variance',
      `${found.words}: the count agrees.`,
      'Nothing needs explaining.',
      'item',
    )
  if (explanation.reason === 'other' && explanation.words.length < 3)
    return refused('reason-needed', '"Other" needs a few words.', 'Say what happened.', 'words')
  return granted([
    draft('variance.explained', {
      date,
      item: explanation.item,
      expected: found.expected,
      counted: found.counted,
      reason: explanation.reason,
      words: explanation.words,
    }),
  ])
}

/** Closes the day over two names, or over the lead's with the reason for it, or refuses with the first thing that stands in the way. */
export function decideClose(
  day: DayRecord,
  signers: Signers,
  secondWanted: boolean,
  view: DuskView,
): Result<EntryDraft[]> {
  const items = closeItems(view)
  const [first] = needsBeforeClose(view, items)
  if (first) return refused(first.code, first.say, first.next)
  const signed = checkSigners(signers, secondWanted)
  if (!signed.ok) return signed
  const { checkedIn, outcomes, left, recorded } = view.totals
  return granted([
    ...ledgerPutRight(view, items),
    draft('day.closed', {
      date: day.date,
      ...signed.value,
      items: items.map(({ item, expected, counted, explained }) => ({
        item,
        expected: expected ?? 0,
        counted: counted ?? 0,
        reason: explained?.reason ?? null,
        words: explained?.words ?? '',
      })),
      animals: { checkedIn, outcomes, left, recorded },
    }),
  ])
}
