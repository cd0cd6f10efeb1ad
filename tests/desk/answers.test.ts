import { afterAll, beforeAll, expect, test } from 'vitest'
import { type CallInput, deskApi, type QueryName } from '../../shared-types/desk-api.ts'
import { animalNumber, DeskId } from '../../shared-types/sample-number.ts'
import { closeDay } from '../support/close.ts'
import {
  type Crew,
  checkIn,
  leadPin,
  openCooler,
  openStation,
  sampleBoth,
  type TestDesk,
} from '../support/desk.ts'

/** The questions of a station day, with something to ask for. */
type Questions = { [N in QueryName]?: () => CallInput<N> }

let desk: TestDesk
let crew: Crew
let questions: Questions

beforeAll(async () => {
  ;({ desk, crew } = await openStation())
  const cooler = await openCooler(desk)
  const animal = await checkIn(desk)
  const { bags } = await sampleBoth(desk, animal, crew.sampler)
  for (const bag of bags) await desk.ask('bag.place', { bag, cooler })
  await desk.ask('cooler.read', { cooler, celsius: 9 })
  await desk.ask('cooler.seal', { cooler, seal: 'K-10442' })
  const { handoff } = await desk.ask('handoff.begin', {
    destination: 'Basin Laboratory',
    coolers: [cooler],
  })
  await checkIn(desk, { species: 'elk', head: { presented: 'head-only', faults: ['skinned'] } })
  const held = await checkIn(desk, { place: { by: 'not-known' } })
  await desk.ask('animal.assign', { animal: held, sampler: crew.sampler })
  await desk.ask('tissue.miss', {
    animal: held,
    site: 'left',
    reason: 'other',
    words: 'too spoiled to tell',
  })
  await checkIn(desk, { consent: 'refused' })
  const nothing = () => ({})
  questions = {
    'shelf.look': nothing,
    who: nothing,
    people: nothing,
    line: nothing,
    kits: nothing,
    coolers: nothing,
    close: nothing,
    handoffs: nothing,
    animal: () => ({ animal: held }),
    bench: () => ({ sampler: crew.sampler }),
    tagSeen: () => ({ tag: 'T1' }),
    cooler: () => ({ cooler }),
    handoff: () => ({ handoff }),
    number: () => ({ text: bags[0] ?? '' }),
    table: () => ({ what: 'entries', format: 'csv' }),
  }
})
afterAll(() => desk.end())

async function askAll(): Promise<string[]> {
  const wrong: string[] = []
  for (const [name, input] of Object.entries(questions) as [QueryName, () => never][]) {
    const answer = await desk.desk.call(desk.session, name, input())
    if (!answer.ok) wrong.push(`${name}: ${answer.refusal.say}`)
    else if (!deskApi[name].output.safeParse(answer.value).success) wrong.push(name)
  }
  return wrong
}

test('every question is answered as the contract says, in the middle of a day', async () => {
  expect(await askAll()).toEqual([])
})

test('and after it was closed', async () => {
  const { working, waiting } = await desk.ask('line', {})
  for (const { animal } of [...working, ...waiting])
    await desk.ask('animal.leave', { animal, reason: 'had to drive home' })
  await closeDay(desk)
  expect(await askAll()).toEqual([])
})

test('and while the next day has no animal yet', async () => {
  desk.wait(24 * 60)
  await desk.ask('day.open', { date: '2026-11-15' as never, kits: 0, blankLabels: 0 })
  expect(await askAll()).toEqual([])
})

test('and by everyone who may look: the questions are the same for all', async () => {
  for (const person of [crew.sampler, crew.volunteer]) {
    await desk.sit(person)
    expect(await askAll()).toEqual([])
  }
  await desk.sit(crew.lead, leadPin)
})

test('any label scanned anywhere is told: what it is, whose, and where', async () => {
  await desk.sit(crew.volunteer)
  const { text } = await desk.ask('table', { what: 'samples', format: 'json' })
  const [sample] = JSON.parse(text) as {
    bag: string
    animal: string
    kit: string
    cooler: string
  }[]
  if (!sample) throw new Error('no sample was listed')
  const told = async (number: string) => (await desk.ask('number', { text: number })).say
  expect(await told(sample.bag)).toMatch(/^Bag .*: left node of animal .*, in cooler North 1\.$/)
  expect(await told(sample.animal)).toMatch(/^Animal .*: mule deer, tag T\d+, finished\.$/)
  expect(await told(sample.kit)).toMatch(/^Kit .*: opened for animal /)
  expect(await told(sample.cooler)).toBe('Cooler North 1: sealed, seal K-10442.')
  expect(await told(crew.sampler)).toBe('Badge of Ines Tarr.')
  const elsewhere = animalNumber(DeskId.parse('26KRVC'), 1)
  expect(await told(elsewhere)).toBe(
    "This is an animal label of this station, and this desk's log does not know it.",
  )
})
