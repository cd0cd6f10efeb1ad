/** Why kits are not where the ledger has them. */
import { grouped, type PersonId, type SampleNumber } from '../../../shared-types/sample-number.ts'
import type { Cause } from '../../../shared-types/views/cause.ts'
import type { Evidence, Variance } from '../likely-cause.ts'

function kits(count: number): string {
  return `${count} ${count === 1 ? 'kit' : 'kits'}`
}

export function handCauses(variance: Variance, person: PersonId): Cause[] {
  return [
    ...notReturned(variance, person),
    ...fromOtherHands(variance, person),
    ...movedUnsaid(variance, person),
  ]
}

/** Kits handed to somebody who has gone home with them. */
function notReturned({ item, off, evidence }: Variance, person: PersonId): Cause[] {
  const holder = evidence.hands.find((each) => each.person === person)
  if (off >= 0 || holder?.duty !== 'off') return []
  const { name, dutySince, lastHanded } = holder
  return [
    {
      code: 'kit-not-returned',
      about: person,
      evidence: item.counted === 0 ? 90 : 60,
      say: `${name} got kits last at ${lastHanded}, went off duty at ${dutySince} and returned none; ${kits(-off)} ${off === -1 ? 'is' : 'are'} still in their name.`,
      next: `Ask ${name}; until they come back the kits stay in their name.`,
      look: { screen: 'kits', number: null },
      settle: {
        command: 'variance.explain',
        input: {
          item: item.item,
          reason: 'not-given-back',
          words: `${name} went off duty at ${dutySince} with ${kits(-off)}`,
        },
      },
    },
  ]
}

/** The kit was told as the sampler's, but came out of the hands that had the animal before. */
function fromOtherHands({ item, off, items, evidence }: Variance, person: PersonId): Cause[] {
  const mine = evidence.openedForAnother.filter(({ sampler, before }) =>
    off > 0 ? sampler === person : before === person,
  )
  const nameOf = (id: PersonId | null) =>
    evidence.hands.find((each) => each.person === id)?.name ?? 'somebody else'
  return mine.map(({ kit, sampler, before, at }): Cause => {
    const other = off > 0 ? before : sampler
    const mirrored = items.some(
      (each) =>
        each.item.of === 'kits-in-hand' && each.item.person === other && each.variance === -off,
    )
    const words = `kit ${grouped(kit)} was told as ${nameOf(sampler)}’s and came from ${nameOf(before)}`
    return {
      code: 'kit-from-other-hands',
      about: kit,
      evidence: mirrored ? 92 : mine.length === Math.abs(off) ? 70 : 45,
      say: `Kit ${grouped(kit)} was told at ${at} as ${nameOf(sampler)}’s by somebody else, and ${nameOf(before)} had the animal before: it may have come from ${nameOf(before)}.`,
      next: `Ask both; it is right if ${nameOf(before)} is short by it.`,
      look: { screen: 'kits', number: kit },
      settle: {
        command: 'variance.explain',
        input: { item: item.item, reason: 'other-hands', words },
      },
    }
  })
}

/** As many over somewhere as are short here: handed over without a word to the desk. */
function movedUnsaid({ item, off, items, evidence }: Variance, here: SampleNumber | null): Cause[] {
  return items.flatMap((other): Cause[] => {
    const isKits = other.item.of === 'kits-in-hand' || other.item.of === 'kits-in-stock'
    if (!isKits || other.key === item.key || other.variance !== -off) return []
    const about = other.item.of === 'kits-in-hand' ? other.item.person : here
    if (!about) return []
    return [
      {
        code: 'kits-moved-unsaid',
        about,
        evidence: 55,
        say: `${other.words}: off by as many the other way, so ${kits(Math.abs(off))} may have changed hands without a word.`,
        next: 'Ask both; if so, this reason puts both right.',
        look: { screen: 'kits', number: null },
        settle: {
          command: 'variance.explain',
          input: {
            item: item.item,
            reason: 'other-hands',
            words: `moved without a word; see ${nameIn(evidence, about)}`,
          },
        },
      },
    ]
  })
}

function nameIn({ hands }: Evidence, person: SampleNumber): string {
  return hands.find((each) => each.person === person)?.name ?? 'stock'
}

export function stockCauses(variance: Variance): Cause[] {
  return [...spoiledUnrecorded(variance), ...movedUnsaid(variance, null)]
}

/** The labels of a kit were made void as spoiled, but the kit itself was never taken off the ledger. */
function spoiledUnrecorded({ off, evidence }: Variance): Cause[] {
  if (off >= 0) return []
  const { voidedAsSpoiled } = evidence
  return voidedAsSpoiled.map(
    ({ kit, at }): Cause => ({
      code: 'kit-spoiled-unrecorded',
      about: kit,
      evidence: voidedAsSpoiled.length === -off ? 90 : 65,
      say: `All labels of kit ${grouped(kit)} were made void as spoiled at ${at}, but the kit is still in stock by the ledger.`,
      next: 'If the kit was thrown away, record it as spoiled.',
      look: { screen: 'kits', number: kit },
      settle: {
        command: 'kit.spoil',
        input: { kit, reason: 'found at the close: its labels were made void as spoiled' },
      },
    }),
  )
}
