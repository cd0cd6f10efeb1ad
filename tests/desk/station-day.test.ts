import { afterEach, expect, test } from 'vitest'
import { openLog } from '../../db/log/open.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { countEverything } from '../support/close.ts'
import {
  type Crew,
  checkIn,
  leadPin,
  openCooler,
  openStation,
  sampleBoth,
  setUpInput,
  TestDesk,
} from '../support/desk.ts'

let desk: TestDesk
let crew: Crew
afterEach(() => desk.end())

test('a whole day: animals in, sampled, bags cold, day closed, coolers given to the courier', async () => {
  ;({ desk, crew } = await openStation())
  const cooler = await openCooler(desk)
  for (let animal = 0; animal < 3; animal += 1) {
    const number = await checkIn(desk)
    desk.wait(5)
    const { bags } = await sampleBoth(desk, number, crew.sampler)
    for (const bag of bags) await desk.ask('bag.place', { bag, cooler })
  }
  const gone = await checkIn(desk)
  await desk.ask('animal.leave', { animal: gone, reason: 'had to drive home' })
  await checkIn(desk, { age: 'young' })
  await desk.ask('cooler.read', { cooler, celsius: 3.5 })
  await desk.ask('cooler.seal', { cooler, seal: 'K-10442' })

  await countEverything(desk, { 'kits-in-stock': -1 })
  const short = await desk.refusal('day.close', { pin: leadPin })
  expect(short.code).toBe('variance-unexplained')
  await desk.ask('variance.explain', {
    item: { of: 'kits-in-stock' },
    reason: 'lost',
    words: 'blown off the table',
  })
  await desk.ask('day.close', { pin: leadPin, aloneBecause: 'alone tonight' })

  const closed = await desk.ask('close', {})
  expect(closed.state).toBe('closed')
  expect(closed.totals).toMatchObject({ checkedIn: 5, finished: 3, left: 1, recorded: 1 })
  const sheet = await desk.ask('closeSheet', {})
  expect(Buffer.from(sheet.base64, 'base64').subarray(0, 5).toString()).toBe('%PDF-')

  const { handoff } = await desk.ask('handoff.begin', {
    destination: 'Basin Animal Disease Laboratory',
    coolers: [cooler],
  })
  await desk.ask('cooler.scanOut', {
    handoff,
    cooler,
    seal: 'k-10442',
    celsius: 4,
    counted: 6,
    words: '',
  })
  const { digest } = await desk.ask('handoff.sign', {
    asItIs: true,
    handoff,
    courier: { name: 'Tam Ridley', organisation: 'Basin Couriers', vehicle: 'van 7' },
    pin: leadPin,
    leadSignature: { how: 'on-paper' },
    courierSignature: { how: 'on-paper' },
  })
  const files = await desk.ask('manifest', { handoff })
  const machine = JSON.parse(files.json.text)
  expect(machine.digest).toBe(digest)
  expect(machine.manifest.bags).toBe(6)
  expect(files.csv.text.trim().split('\n')).toHaveLength(7)

  const { balances } = await desk.ask('kits', {})
  const count = (key: string) => balances.find((each) => each.key === key)?.count
  expect(count('stock')).toBe(79)
  expect(count('missing')).toBe(1)
  expect(count('used')).toBe(0)
  expect(count('sent')).toBe(3)
  expect(count(`hands:${crew.sampler}`)).toBe(17)

  const { open } = await desk.ask('shelf.look', {})
  await desk.ask('shelf.shut', {})
  const log = openLog(`${desk.folder}/${open}`)
  if (!log.ok) throw new Error(log.refusal.say)
  expect(verifyLog(log.value)).toMatchObject({ whole: true, readTables: 'equal', findings: [] })
  log.value.close()
})

test('coolers counted at set-up stand ready under numbers of their own', async () => {
  desk = new TestDesk()
  await desk.ask('station.setUp', { ...setUpInput, coolers: 2 })
  const { coolers } = await desk.ask('coolers', {})
  expect(coolers.map(({ name, keeping, state }) => `${name} ${keeping} ${state}`)).toEqual([
    'Cooler 1 chilled open',
    'Cooler 2 chilled open',
  ])
  expect(await openCooler(desk, 'Spare')).toMatch(/^26KRVA0003C/)
})
