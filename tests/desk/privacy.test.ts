import { afterAll, beforeAll, expect, test } from 'vitest'
import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import type { PdfFile } from '../../shared-types/views/common.ts'
import { pageTexts } from '../print/read-pdf.ts'
import {
  crewPin,
  type Crew,
  factsOf,
  leadPin,
  openCooler,
  openStation,
  sampleBoth,
  type TestDesk,
} from '../support/desk.ts'
import { tablesOf } from '../support/raw-log.ts'

/** What no file may hold in words that can be read. */
const contact = { name: 'Wren Ostler', phone: '555-0142-77', email: 'wren.ostler@example.org' }
const secrets = [...Object.values(contact), 'Ostler']

let desk: TestDesk
let crew: Crew
let animal: AnimalNumber
const outputs = new Map<string, string>()

async function keep(what: string, { base64 }: PdfFile) {
  const pages = await pageTexts(Uint8Array.from(Buffer.from(base64, 'base64')))
  outputs.set(what, pages.join(' '))
}

beforeAll(async () => {
  ;({ desk, crew } = await openStation())
  ;({ animal } = await desk.ask('animal.checkIn', { facts: factsOf(), contact }))
  const { pdf } = await desk.ask('labels.printKits', {
    for: { whom: 'animal', animal },
    stock: 'sheet-letter',
  })
  await keep('kit labels', pdf)
  await desk.ask('animal.amend', { animal, facts: factsOf(), reason: 'typed the wrong tag' })
  const { bags } = await sampleBoth(desk, animal, crew.sampler)
  const cooler = await openCooler(desk)
  for (const bag of bags) await desk.ask('bag.place', { bag, cooler })
  const again = {
    number: bags[0] ?? '',
    reason: 'torn',
    words: '',
    stock: 'sheet-a4',
    destroyed: true,
  } as const
  await keep('label printed again', (await desk.ask('label.reprint', again)).pdf)
  await keep(
    'cooler label',
    (await desk.ask('labels.printCooler', { cooler, stock: 'sheet-a4' })).pdf,
  )
  await desk.ask('cooler.seal', { cooler, seal: 'K-10442' })
  for (const { item } of (await desk.ask('close', {})).items)
    await desk.ask('count.enter', { item, counted: 0 })
  for (const { item, expected } of (await desk.ask('close', {})).items)
    await desk.ask('count.enter', { item, counted: expected ?? 0 })
  await desk.ask('day.close', { pin: leadPin, aloneBecause: 'alone tonight' })
  await keep('close sheet', await desk.ask('closeSheet', {}))
  const { handoff } = await desk.ask('handoff.begin', {
    destination: 'Basin Laboratory',
    coolers: [cooler],
  })
  await desk.ask('cooler.scanOut', {
    handoff,
    cooler,
    seal: 'K-10442',
    celsius: 4,
    counted: 2,
    words: '',
  })
  await desk.ask('handoff.sign', {
    asItIs: true,
    handoff,
    courier: { name: 'Tam Ridley', organisation: 'Basin Couriers', vehicle: 'van 7' },
    pin: leadPin,
    leadSignature: { how: 'on-paper' },
    courierSignature: { how: 'on-paper' },
  })
  const manifest = await desk.ask('manifest', { handoff })
  await keep('manifest', manifest.pdf)
  outputs.set('manifest JSON', manifest.json.text).set('manifest CSV', manifest.csv.text)
  for (const what of ['animals', 'samples', 'kits', 'coolers', 'entries'] as const)
    for (const format of ['csv', 'json'] as const)
      outputs.set(`${what} as ${format}`, (await desk.ask('table', { what, format })).text)
})
afterAll(() => desk.end())

test('the contact is kept, so that the hunter can be told', async () => {
  expect((await desk.ask('animal', { animal })).contact).toEqual(contact)
  expect(tablesOf(desk.file).get('contact')).toHaveLength(1)
})

test.each(secrets)('%s is in no entry and in no table, not even in that of contacts', (secret) => {
  for (const [table, rows] of tablesOf(desk.file))
    expect(JSON.stringify(rows), table).not.toContain(secret)
})

test.each(secrets)('%s is on no label, sheet, manifest or list', (secret) => {
  expect(outputs.size).toBe(17)
  for (const [what, text] of outputs) expect(text, what).not.toContain(secret)
})

test('what is searched are words indeed: the tag is on the labels, and the courier on the manifest', () => {
  expect(outputs.get('kit labels')).toMatch(/T\d{5}/)
  expect(outputs.get('manifest')).toContain('Tam Ridley')
  expect(outputs.get('close sheet')).toContain('Orla Vance')
})

test('no hunter and no tag is on what the courier is given', async () => {
  const { text } = await desk.ask('table', { what: 'animals', format: 'json', hunters: true })
  const hunters = (JSON.parse(text) as { hunter: string; tag: string }[]).flatMap((each) => [
    each.hunter,
    each.tag,
  ])
  for (const word of hunters)
    for (const what of ['manifest', 'manifest JSON', 'manifest CSV', 'cooler label'])
      expect(outputs.get(what), what).not.toContain(word)
})

test('no PIN is anywhere in the file, and its record is one of scrypt', () => {
  const tables = tablesOf(desk.file)
  expect(JSON.stringify(tables.get('pin'))).toMatch(/scrypt\$15\$/)
  for (const [table, rows] of tables)
    for (const pin of [leadPin, crewPin])
      expect(JSON.stringify(rows).replaceAll('\\', ''), table).not.toContain(`"${pin}"`)
})
