/** The first quarter of an hour: station, crew, shifts, coolers, labels in reserve. */
import { DeskLetter } from '../../../shared-types/sample-number.ts'
import { localTime } from '../local-time.ts'
import type { Process } from './agenda.ts'
import { openBox, readEveryTwoHours } from './coolers.ts'
import type { Floor, Member } from './floor.ts'
import { keepReserve, openingCounts } from './kits.ts'
import { laterUnit, practicePin, practiceSettings, practiceStation } from './station-facts.ts'

export function* openStation(floor: Floor): Process {
  setUp(floor)
  yield 1
  for (const member of floor.crew) yield* introduce(floor, member)
  for (const kind of ['Deer', 'Elk'] as const) openBox(floor, kind)
  floor.agenda.start(readEveryTwoHours(floor))
  floor.agenda.start(keepReserve(floor))
}

function setUp(floor: Floor): void {
  const { desk, zone, date } = floor.frame
  const [lead] = floor.crew
  const { kits, blankLabels } = openingCounts(floor.guests.length)
  floor.kitsInStock = kits
  if (lead) lead.onDuty = true
  floor.tell(floor.lead, 'station.setUp', {
    season: desk.slice(0, 2),
    station: practiceStation.code,
    letter: DeskLetter.parse(desk.slice(5)),
    name: practiceStation.name,
    zone,
    date,
    settings: practiceSettings,
    lead: { name: lead?.plan.name ?? '', pin: practicePin },
    kits,
    blankLabels,
  })
}

const quarterMs = 15 * 60_000

/** Shifts begin and end on the quarter of an hour. */
function quarterAt(floor: Floor, minute: number): string {
  const ms = Math.floor(floor.msAt(minute) / quarterMs) * quarterMs
  return localTime(ms, floor.frame.zone)
}

/** The lead adds a person and plans the shift; the lead is there since the set-up. */
function* introduce(floor: Floor, { plan }: Member): Process {
  const { person, name, role, training, shift } = plan
  if (person !== floor.lead) {
    const pin = practicePin
    floor.tell(floor.lead, 'person.add', { name, role, training: [...training], pin })
    // Ten minutes for all of them, however many: nobody signs in before they are added.
    yield 10 / floor.crew.length
  }
  if (!shift) return
  const [from, to] = [quarterAt(floor, shift.from), quarterAt(floor, shift.to)]
  const { date } = floor.frame
  floor.tell(floor.lead, 'shift.plan', { person, date, from, to })
}

/** A hunter comes from a unit that is not on the list: the lead adds it. */
export function* addUnit(floor: Floor): Process {
  yield floor.shape.unitAdded - floor.agenda.now
  const settings = { ...practiceSettings, units: [...practiceSettings.units, laterUnit] }
  floor.tell(floor.lead, 'settings.change', { settings })
}

/** The lead has shown a sampler how to work a skinned head. */
export function* addTraining(floor: Floor): Process {
  yield floor.shape.trainingAdded - floor.agenda.now
  const member = floor.crew.find(
    ({ plan, onDuty, training }) =>
      plan.role === 'sampler' && onDuty && !training.includes('skinned-heads'),
  )
  if (!member) return
  const { person, name, role } = member.plan
  member.training = [...member.training, 'skinned-heads']
  const changed = { name, role, training: [...member.training], active: true }
  floor.tell(floor.lead, 'person.change', { person, ...changed })
}
