/** A person's day: signing in, kits in hand, a break, going home. */
import type { Duty } from '../../../shared-types/person.ts'
import type { Process } from './agenda.ts'
import { takesKitsHome } from './faults.ts'
import type { Floor, Member } from './floor.ts'
import { giveBack, handOut } from './kits.ts'
import { assignFree } from './line.ts'
import { practicePin } from './station-facts.ts'

function signIn(floor: Floor, { plan: { person } }: Member): void {
  floor.tell(person, 'person.signIn', { person, pin: practicePin })
}

function setDuty(floor: Floor, member: Member, duty: Duty): void {
  const { person } = member.plan
  member.onDuty = duty === 'on'
  floor.tell(person, 'duty.change', { person, duty })
  if (duty !== 'on') floor.tell(person, 'person.lock', {})
}

/** Nobody leaves an animal half done. */
function* untilFree(member: Member): Process {
  while (member.busy) yield 1
}

function* takeBreak(floor: Floor, member: Member): Process {
  yield* untilFree(member)
  setDuty(floor, member, 'break')
  yield 30
  signIn(floor, member)
  setDuty(floor, member, 'on')
  assignFree(floor)
}

/** The shift of a sampler or volunteer. Whoever's shift lasts until dusk stays for the close. */
export function* workShift(floor: Floor, member: Member): Process {
  const { shift, role } = member.plan
  if (!shift) return
  const until = (minute: number) => minute - floor.agenda.now
  yield until(shift.from)
  signIn(floor, member)
  setDuty(floor, member, 'on')
  if (role === 'sampler') handOut(floor, member, floor.shape.firstKits)
  assignFree(floor)
  if (shift.break !== null) {
    yield until(shift.break)
    yield* takeBreak(floor, member)
  }
  if (shift.to >= floor.shape.lastMinute) return
  yield until(shift.to)
  yield* untilFree(member)
  if (!takesKitsHome(floor, member)) giveBack(floor, member)
  setDuty(floor, member, 'off')
}

/** After the close everyone still here goes home; kits in hand were counted. */
export function goHome(floor: Floor): void {
  for (const member of floor.crew) if (member.onDuty) setDuty(floor, member, 'off')
}
