/** A sampler's work on one made-up animal, from taking it to the last bag. */
import {
  type BagNumber,
  bagNumber,
  type KitNumber,
  numberParts,
} from '../../../shared-types/sample-number.ts'
import { sitePart } from '../../../shared-types/tissue.ts'
import { trainingLacked } from '../training.ts'
import type { Process } from './agenda.ts'
import { otherHands, plant } from './faults.ts'
import { befalls, type Floor, type Guest, type Member } from './floor.ts'
import { openKit } from './kits.ts'
import { practiceStock } from './station-facts.ts'
import type { Look, TissuePlan } from './tissue-plan.ts'
import { setSuggestionAside } from './waits.ts'

/** The sampler on duty whom an animal was given by mistake, if there is another one at all. */
function someoneElse(floor: Floor, guest: Guest, member: Member): Member | undefined {
  return floor.crew.find(
    (each) =>
      each !== member &&
      each.onDuty &&
      each.plan.role === 'sampler' &&
      trainingLacked(each, guest.facts).length === 0,
  )
}

function* assign(floor: Floor, guest: Guest, member: Member, from?: Member): Process {
  const { animal } = guest
  const other =
    from ?? (befalls(guest, 'reassigned') ? someoneElse(floor, guest, member) : undefined)
  if (other) {
    setSuggestionAside(floor, floor.lead)
    floor.tell(floor.lead, 'animal.assign', { animal, sampler: other.plan.person })
    yield from ? 4 : 1
  }
  const sampler = member.plan.person
  const by = other || floor.chance.happens(0.6) ? floor.lead : sampler
  floor.tell(by, 'animal.assign', { animal, sampler })
}

function reprint(floor: Floor, member: Member, number: BagNumber, words: string): void {
  const why = { reason: 'torn', words, destroyed: true } as const
  floor.tell(member.plan.person, 'label.reprint', { number, ...why, stock: practiceStock })
}

/** Everything about one tissue of one animal at the bench. */
interface AtHand {
  readonly floor: Floor
  readonly guest: Guest
  readonly member: Member
  readonly bag: BagNumber
  readonly plan: TissuePlan
}

function* look({ floor, guest, member, plan: { site } }: AtHand, seen: Look): Process {
  yield floor.chance.between(0.8, 1.8)
  floor.tell(member.plan.person, 'tissue.check', { animal: guest.animal, site, ...seen })
}

function* seal({ floor, guest, member, plan: { site }, bag }: AtHand): Process {
  yield floor.chance.between(0.3, 0.7)
  floor.tell(member.plan.person, 'bag.seal', { animal: guest.animal, site, bag })
  floor.unusedLabels -= 1
}

/** The bag just sealed splits: it is discarded, its label printed again, the tissue bagged again. */
function* bagAgain(hand: AtHand, seen: Look): Process {
  const { floor, member, bag } = hand
  yield 0.4
  floor.tell(member.plan.person, 'bag.discard', { bag, reason: 'the bag split at its seam' })
  yield 0.4
  reprint(floor, member, bag, 'went with the bag that split')
  floor.unusedLabels += 1
  yield* look(hand, seen)
  yield* seal(hand)
}

/** Takes one tissue, or records why not; answers with whether it is now in a bag. */
function* takeTissue(hand: AtHand): Generator<number, boolean, void> {
  const { floor, guest, member, plan, bag } = hand
  for (const seen of plan.looks) yield* look(hand, seen)
  const last = plan.looks.at(-1)
  if (plan.missed || !last) {
    yield 0.3
    const missed = { site: plan.site, reason: plan.missed ?? 'not-found', words: '' } as const
    floor.tell(member.plan.person, 'tissue.miss', { animal: guest.animal, ...missed })
    // Its label stays empty and is void when the animal is finished.
    floor.unusedLabels -= 1
    return false
  }
  if (befalls(guest, 'label-torn')) reprint(floor, member, bag, '')
  yield* seal(hand)
  if (befalls(guest, 'bag-split')) yield* bagAgain(hand, last)
  return true
}

function* takeAll(
  floor: Floor,
  guest: Guest,
  member: Member,
  kit: KitNumber,
): Generator<number, BagNumber[], void> {
  const { serial } = numberParts(kit)
  const bags: BagNumber[] = []
  for (const plan of guest.plan.tissues) {
    const bag = bagNumber(floor.frame.desk, serial, sitePart[plan.site])
    if (yield* takeTissue({ floor, guest, member, bag, plan })) bags.push(bag)
  }
  return bags
}

function toBench(floor: Floor, guest: Guest, bags: readonly BagNumber[]): void {
  const kind = guest.facts.species === 'elk' ? 'Elk' : 'Deer'
  for (const bag of bags) floor.bench.push({ bag, kind, goesWrong: befalls(guest, 'wrong-cooler') })
}

/**
 * Works an animal. Answers with whether it is done; if not, it was put back and waits again. Five to ten
 * minutes with the paperwork (wgfd.wyo.gov, "CWD Testing": 5 to 10 minutes).
 */
export function* work(
  floor: Floor,
  guest: Guest,
  member: Member,
): Generator<number, boolean, void> {
  yield floor.chance.between(0.3, 1.2)
  const from = guest.ahead.has('put-back') ? undefined : otherHands(floor, member, guest)
  yield* assign(floor, guest, member, from)
  yield floor.chance.between(0.6, 1.6)
  if (befalls(guest, 'put-back')) {
    const reason = 'the hunter wants the head caped first'
    floor.tell(member.plan.person, 'animal.putBack', { animal: guest.animal, reason })
    return false
  }
  const kit = yield* openKit(floor, guest, member, from)
  const bags = yield* takeAll(floor, guest, member, kit)
  yield floor.chance.between(0.3, 0.8)
  const isWhole = bags.length === guest.plan.tissues.length
  const isForgotten = isWhole && floor.isLate && floor.toPlant.has('animal-with-sampler')
  if (isForgotten) plant(floor, 'animal-with-sampler', guest.animal, [])
  else floor.tell(member.plan.person, 'animal.finish', { animal: guest.animal })
  toBench(floor, guest, bags)
  guest.state = 'done'
  return true
}
