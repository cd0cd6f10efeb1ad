/**
 * A desk that works as fast as it can until it is killed, run as its own program. It says on its output
 * each action that it was told is on disk (`+ kind number`), each refusal (`- code`), and what it is told
 * of its backups (`~ code`).
 */
import { randomBytes } from 'node:crypto'
import { readdirSync, writeSync } from 'node:fs'
import { argv } from 'node:process'
import { createDesk } from '../../electron/desk/desk.ts'
import type { AnimalFacts } from '../../shared-types/animal.ts'
import type { CallInput, CallName, CallOutput } from '../../shared-types/desk-api.ts'
import type { AnimalNumber, PersonId } from '../../shared-types/sample-number.ts'
import { settings } from '../support/station.ts'
import { clockOf } from './jumping-clock.ts'
import { leadPin, type Work } from './work.ts'

const work = JSON.parse(argv[2] ?? '{}') as Work
const clock = clockOf(work.clock)
const desk = createDesk({
  folder: work.folder,
  now: clock.now,
  randomBytes,
  zone: 'America/Denver',
  machine: { laptop: 'the-laptop', uptime: () => performance.now(), about: {} },
  backupPauseMs: 30,
})
const session = desk.openSession()

/** Written straight to the pipe: an acknowledgement waiting in a buffer would die with the program. */
const say = (line: string) => writeSync(1, `${line}\n`)
let refusalsLeft = work.refusals

/** The answer, or undefined for a refusal, of which the program has had enough at some point. */
async function ask<N extends CallName>(
  name: N,
  input: CallInput<N>,
): Promise<CallOutput<N> | undefined> {
  const result = await desk.call(session, name, input)
  if (result.ok) return result.value
  say(`- ${result.refusal.code}`)
  if (result.refusal.code === 'clock-set-back') await desk.call(session, 'clock.accept', {})
  refusalsLeft -= 1
  if (refusalsLeft === 0) process.exit(0)
  return undefined
}

let animals = 0
const factsOf = (): AnimalFacts => ({
  hunter: `H${work.seed}`,
  tag: `T${work.seed}N${animals++}`,
  species: 'mule-deer',
  sex: 'male',
  age: 'adult',
  harvested: '2026-11-14' as never,
  place: { by: 'unit', unit: '12', place: 'head of Dry Fork' },
  head: { presented: 'carcass', faults: [] },
  consent: 'given',
  programme: 'mandatory',
})

async function openLog(): Promise<PersonId | undefined> {
  const [file] = readdirSync(work.folder).filter((name) => name.endsWith('.stationlog'))
  if (file === undefined) return setUp()
  if (!(await ask('shelf.open', { file }))) return undefined
  const people = await ask('people', {})
  const lead = people?.people.find(({ role }) => role === 'lead')?.person
  return lead && (await ask('person.signIn', { person: lead, pin: leadPin })) ? lead : undefined
}

async function setUp(): Promise<PersonId | undefined> {
  const made = await ask('station.setUp', {
    season: '26',
    station: 'KRV',
    letter: 'A',
    name: 'Cinder Gap',
    zone: 'America/Denver',
    date: '2026-11-14' as never,
    settings,
    lead: { name: 'Orla Vance', pin: leadPin },
    kits: 50_000,
    blankLabels: 900_000,
  })
  if (made) say('+ station.set-up 26KRVA')
  if (made)
    await ask('kits.move', {
      from: { in: 'stock' },
      to: { in: 'hands', person: made.lead },
      count: 40_000,
      reason: '',
    })
  return made?.lead
}

/** Four animals arrive, and the last is worked. */
async function workOneAnimal(sampler: PersonId): Promise<void> {
  for (let guests = 0; guests < 3; guests += 1) await checkIn()
  const animal = await checkIn()
  if (animal) await workAnimal(animal, sampler)
}

async function checkIn(): Promise<AnimalNumber | undefined> {
  const facts = factsOf()
  const contact = { name: 'Wren Ostler', phone: '555-0142', email: '' }
  const answer = await ask('animal.checkIn', { facts, contact })
  if (answer) say(`+ animal.checked-in ${facts.tag}`)
  return answer?.animal
}

/** Both sides of an animal taken; stops where it is refused. */
async function workAnimal(animal: AnimalNumber, sampler: PersonId): Promise<void> {
  const labels = { for: { whom: 'animal', animal }, stock: 'roll-51x25' } as const
  const kit = (await ask('labels.printKits', labels))?.kits[0]
  if (!kit) return
  say(`+ kit.numbered ${kit}`)
  if (!(await ask('animal.assign', { animal, sampler }))) return
  say(`+ animal.assigned ${animal}`)
  if (!(await ask('kit.open', { animal, kit }))) return
  say(`+ kit.opened ${kit}`)
  for (const site of ['left', 'right'] as const) {
    const looked = { animal, site, check: 'lymph-node', sizeMm: 20 } as const
    if (!(await ask('tissue.check', looked))) return
    const bag = (await ask('animal', { animal }))?.sites.find(
      (each) => each.site === site,
    )?.expectedBag
    if (!bag || !(await ask('bag.seal', { animal, site, bag }))) return
    say(`+ bag.sealed ${bag}`)
  }
  if (await ask('animal.finish', { animal })) say(`+ animal.finished ${animal}`)
}

async function keepBackups(folder: string): Promise<void> {
  let last = ''
  const look = async () => {
    const backup = await desk.call(session, 'backup', {})
    const trouble = backup.ok ? backup.value.trouble : null
    const told = trouble ? `~ ${trouble.say}` : '~ backups are good'
    if (told !== last) say(told)
    last = told
  }
  desk.watch((topics) => void (topics.includes('backup') && look()))
  desk.offerBackupFolder(folder)
  const [place] = (await ask('backup', {}))?.others ?? []
  if (place) await ask('backup.choose', { place: place.mark })
}

const lead = await openLog()
if (lead && work.backup) await keepBackups(work.backup)
while (lead) {
  await workOneAnimal(lead)
  clock.step()
  // A desk waits for people; this one at least lets its timers run.
  await new Promise((resolve) => setImmediate(resolve))
}
