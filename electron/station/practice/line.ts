/** The line of a made-up day: check-in, who works whom, hunters who leave, facts put right. */
import { noSampleReason } from '../check-in.ts'
import { lineSettingsOf } from '../line-settings.ts'
import { everySkill, skillsNeeded } from '../skills.ts'
import { trainingLacked } from '../training.ts'
import { Turns } from '../turn.ts'
import type { Process } from './agenda.ts'
import { work } from './bench.ts'
import { befalls, type Floor, type Guest, type Member } from './floor.ts'
import { printFor } from './kits.ts'
import { practiceSettings } from './station-facts.ts'

/** Every animal in the order of its arrival. */
export function* receive(floor: Floor): Process {
  for (const guest of floor.guests) {
    yield guest.arrives - floor.agenda.now
    checkIn(floor, guest)
  }
}

function checkIn(floor: Floor, guest: Guest): void {
  const { contact } = guest.plan
  floor.tell(floor.helper(), 'animal.checkIn', { facts: guest.facts, contact })
  if (befalls(guest, 'amended')) floor.agenda.start(putRight(floor, guest))
  if (noSampleReason(practiceSettings, guest.facts)) {
    guest.state = 'done'
    return
  }
  guest.state = 'here'
  if (befalls(guest, 'labels-at-check-in')) printFor(floor, guest)
  joinLine(floor, guest)
}

function joinLine(floor: Floor, guest: Guest): void {
  const returns = befalls(guest, 'leaves-and-returns')
  if (returns || befalls(guest, 'leaves-for-good'))
    return floor.agenda.start(leave(floor, guest, returns))
  floor.waiting.push(guest)
  assignFree(floor)
}

/** Each animal waiting, in the order of the line, to a free sampler trained for it. */
export function assignFree(floor: Floor): void {
  for (const guest of inOrder(floor)) {
    const member = freeSampler(floor, guest)
    if (!member) continue
    passOver(floor, guest, member)
    floor.waiting.splice(floor.waiting.indexOf(guest), 1)
    member.busy = true
    floor.agenda.start(serve(floor, guest, member))
  }
}

/** The line as the desk would have it worked. */
function inOrder(floor: Floor): Guest[] {
  const waiting = floor.waiting.toSorted((a, b) => a.arrives - b.arrives)
  const { mandatoryFirst, overtakenAtMost } = lineSettingsOf(practiceSettings)
  const turns = new Turns(waiting.length, overtakenAtMost)
  waiting.forEach(({ facts, overtaken }, place) => {
    const rank = mandatoryFirst && facts.programme === 'voluntary' ? 2 : 1
    turns.join(place, rank, skillsNeeded(facts), overtaken)
  })
  return waiting.flatMap(() => waiting[turns.take(everySkill)] ?? [])
}

/** Those who came before and could have been worked as well are overtaken once more. */
function passOver({ waiting }: Floor, taken: Guest, member: Member): void {
  for (const guest of waiting)
    if (guest.arrives < taken.arrives && trainingLacked(member, guest.facts).length === 0)
      guest.overtaken += 1
}

/** Of those free, the one with the least training: the others are wanted for other heads. */
function freeSampler(floor: Floor, guest: Guest): Member | undefined {
  return floor.crew
    .filter(({ plan, onDuty, busy }) => plan.role === 'sampler' && onDuty && !busy)
    .filter((member) => trainingLacked(member, guest.facts).length === 0)
    .toSorted((a, b) => a.training.length - b.training.length)[0]
}

function* serve(floor: Floor, guest: Guest, member: Member): Process {
  const done = yield* work(floor, guest, member)
  // Knives and table are cleaned between two animals.
  yield floor.chance.between(0.5, 1.5)
  member.busy = false
  assignFree(floor)
  if (done) return
  yield 10
  joinLine(floor, guest)
}

function* leave(floor: Floor, guest: Guest, returns: boolean): Process {
  const { animal } = guest
  yield floor.chance.between(15, 40)
  floor.tell(floor.helper(), 'animal.leave', { animal, reason: 'the hunter could not wait' })
  if (!returns) {
    guest.state = 'done'
    return
  }
  yield floor.chance.between(15, 35)
  floor.tell(floor.lead, 'animal.putBack', { animal, reason: 'the hunter came back' })
  joinLine(floor, guest)
}

/** The hunter finds the place on the map, or the sex was ticked wrong. */
function* putRight(floor: Floor, guest: Guest): Process {
  yield floor.chance.between(6, 15)
  const unknown = guest.facts.place.by === 'not-known'
  guest.facts = unknown
    ? { ...guest.facts, place: { by: 'unit', unit: 'P4', place: 'creek crossing' } }
    : { ...guest.facts, sex: guest.facts.sex === 'female' ? 'male' : 'female' }
  const reason = unknown ? 'the hunter found the place on the map' : 'sex was ticked wrong'
  floor.tell(floor.helper(), 'animal.amend', { animal: guest.animal, facts: guest.facts, reason })
}
