/** At dusk every printed label is used, void, found unused, or known to be unaccounted for. */
import { afterEach, beforeEach, expect, test } from 'vitest'
import { kitOf } from '../../shared-types/sample-number.ts'
import { pageTexts } from '../print/read-pdf.ts'
import { closeDay } from '../support/close.ts'
import {
  checkIn,
  type Crew,
  openCooler,
  openStation,
  sampleBoth,
  type TestDesk,
} from '../support/desk.ts'

let desk: TestDesk
let crew: Crew
beforeEach(async () => {
  ;({ desk, crew } = await openStation())
})
afterEach(() => desk.end())

const labels = async () => (await desk.ask('close', {})).labels

/** Two animals sampled and two kits reserved: 4 × 4 numbers, of which one was lost and reprinted. */
async function worked() {
  const cooler = await openCooler(desk)
  for (let animal = 0; animal < 2; animal += 1) {
    const { bags } = await sampleBoth(desk, await checkIn(desk), crew.sampler)
    for (const bag of bags) await desk.ask('bag.place', { bag, cooler })
  }
  const { kits } = await desk.ask('labels.printKits', {
    for: { whom: 'reserve', count: 2 },
    stock: 'roll-51x25',
  })
  const lost = { number: kits[0] ?? '', reason: 'lost', words: '', stock: 'roll-51x25' } as const
  await desk.ask('label.reprint', lost)
}

test('the account of the labels is shown once they were counted, and adds up', async () => {
  await worked()
  expect(await labels()).toBeNull()
  await desk.ask('count.enter', { item: { of: 'unused-kit-labels' }, counted: 6 })
  expect(await labels()).toEqual({ printed: 17, used: 8, void: 1, unused: 6, unaccounted: 2 })
  await desk.ask('count.enter', { item: { of: 'unused-kit-labels' }, counted: 8 })
  expect(await labels()).toEqual({ printed: 17, used: 8, void: 1, unused: 8, unaccounted: 0 })
})

test('a label that stays lost is made void, and is then accounted for', async () => {
  await worked()
  await desk.ask('count.enter', { item: { of: 'unused-kit-labels' }, counted: 7 })
  const [kit] = (await desk.ask('kits', {})).reserved
  const stub = kit?.labels.find(({ number }) => kitOf(number) === kit.kit && number.includes('H'))
  await desk.ask('label.void', { number: stub?.number ?? '', reason: 'lost', words: '' })
  expect(await labels()).toEqual({ printed: 17, used: 8, void: 2, unused: 7, unaccounted: 0 })
})

test('the close sheet tells it', async () => {
  await worked()
  await closeDay(desk, { 'unused-kit-labels': -2 })
  const { base64 } = await desk.ask('closeSheet', {})
  const [page] = await pageTexts(new Uint8Array(Buffer.from(base64, 'base64')))
  expect(page).toContain('Printed 17 Used 8 Void 1 Not used, found 6 Unaccounted for 2')
})
