/** Two desks of one station, each with its own laptop, and the office that merges their logs. */
import { join } from 'node:path'
import { mergeLogs } from '../../db/merge/merge.ts'
import { nobodysDesk, type PersonId, SeasonStation } from '../../shared-types/sample-number.ts'
import {
  checkIn,
  type Crew,
  crewPin,
  leadPin,
  openCooler,
  openStation,
  sampleBoth,
  TestDesk,
} from './desk.ts'

export const station = SeasonStation.parse('26KRV')

export interface DeskAtWork {
  readonly desk: TestDesk
  readonly crew: Crew
}

/** Desk A and desk C of Cinder Gap, both opened for the same morning. */
export async function twoDesks(): Promise<{ a: DeskAtWork; c: DeskAtWork }> {
  return { a: await openStation(), c: await openStation({ letter: 'C' }) }
}

/** One deer worked at the desk, its bags in a cooler. */
export async function oneDeer({ desk, crew }: DeskAtWork, tag: string) {
  const sampled = await sampleBoth(desk, await checkIn(desk, { tag }), crew.sampler)
  const cooler = await openCooler(desk, `Cooler of ${tag}`)
  for (const bag of sampled.bags) await desk.ask('bag.place', { bag, cooler })
  return { ...sampled, cooler }
}

/** A kit printed at one desk is used on an animal of the other, whose cooler takes the bags. */
export async function kitAcross(from: DeskAtWork, to: DeskAtWork, tag: string) {
  const { kits } = await from.desk.ask('labels.printKits', {
    for: { whom: 'reserve', count: 1 },
    stock: 'roll-51x25',
  })
  const [kit = ''] = kits
  const animal = await checkIn(to.desk, { tag })
  await to.desk.ask('animal.assign', { animal, sampler: to.crew.sampler })
  await to.desk.ask('kit.open', { animal, kit })
  await to.desk.ask('tissue.check', { animal, site: 'left', check: 'lymph-node', sizeMm: 22 })
  const { sites } = await to.desk.ask('animal', { animal })
  const bag = sites.find(({ site }) => site === 'left')?.expectedBag ?? ''
  await to.desk.ask('bag.seal', { animal, site: 'left', bag })
  await to.desk.ask('tissue.miss', { animal, site: 'right', reason: 'other', words: 'shot away' })
  await to.desk.ask('animal.finish', { animal })
  const cooler = await openCooler(to.desk, `Cooler of ${tag}`)
  await to.desk.ask('bag.place', { bag, cooler })
  return { kit, bag, cooler }
}

export interface Office {
  readonly office: TestDesk
  readonly lead: PersonId
  readonly second: PersonId
}

/** The logs of the desks merged as they stand, and taken up by an office with a lead and a helper. */
export async function officeOver(...desks: readonly DeskAtWork[]): Promise<Office> {
  const office = new TestDesk()
  office.now = Math.max(...desks.map(({ desk }) => desk.now)) + 3_600_000
  merge(office, desks)
  const { lead } = await office.ask('office.setUp', {
    file: 'weekend.stationlog',
    season: '26',
    station: 'HEC',
    letter: 'A',
    name: 'Basin Office',
    zone: 'America/Denver',
    lead: { name: 'Ada Moor', pin: leadPin },
  })
  const { person: second } = await office.ask('person.add', {
    name: 'Wim Aster',
    role: 'office',
    training: [],
    pin: crewPin,
  })
  return { office, lead, second }
}

/** Merges the desks' logs into the office's. */
export function merge(office: TestDesk, desks: readonly DeskAtWork[]): void {
  const merged = mergeLogs({
    out: join(office.folder, 'weekend.stationlog'),
    files: desks.map(({ desk }) => desk.file),
    office: nobodysDesk,
  })
  if (!merged.ok) throw new Error(merged.refusal.say)
}
