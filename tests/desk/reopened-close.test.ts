/** A day that is closed, opened again and closed once more: what the first signature settled is settled. */
import { afterEach, beforeEach, expect, test } from 'vitest'
import { alone, countEverything, explainEverything, handsOf } from '../support/close.ts'
import { type Crew, leadPin, openStation, type TestDesk } from '../support/desk.ts'
import { pageTexts } from '../print/read-pdf.ts'

let desk: TestDesk
let crew: Crew
beforeEach(async () => {
  ;({ desk, crew } = await openStation())
  await desk.ask('labels.printKits', {
    for: { whom: 'reserve', count: 2 },
    stock: 'roll-51x25',
  })
})
afterEach(() => desk.end())

const signing = { pin: leadPin, aloneBecause: alone }
const sheet = async () => {
  const { base64 } = await desk.ask('closeSheet', {})
  return (await pageTexts(new Uint8Array(Buffer.from(base64, 'base64')))).join(' ')
}
const variances = async () => {
  const { items } = await desk.ask('close', {})
  return Object.fromEntries(
    items.flatMap(({ key, variance, explained }) =>
      variance ? [[key, explained?.reason ?? 'unexplained']] : [],
    ),
  )
}

test('kits and blank labels that a first close found short are neither missing nor asked for at the second', async () => {
  await countEverything(desk, {
    'kits-in-stock': -2,
    [handsOf(crew.sampler)]: -1,
    'blank-labels': -7,
  })
  await explainEverything(desk)
  await desk.ask('day.close', signing)
  await desk.ask('day.reopen', { reason: 'a late truck' })
  // Counted again as it lies there: the kits by now, the labels as before.
  const { items } = await desk.ask('close', {})
  const there = new Map(items.map(({ key, counted }) => [key, counted]))
  for (const { key, item } of items)
    await desk.ask('count.enter', { item, counted: there.get(key) ?? 0 })
  expect(await variances()).toEqual({})
  await desk.ask('day.close', signing)
  const words = await sheet()
  expect(words).toContain('All 5 counts agree')
  expect(words).not.toContain('NO REASON GIVEN')
  for (const settled of ['Kits in stock, expected 80, counted 78', 'Blank labels left, expected'])
    expect(words.replaceAll(/\s+/g, ' ')).toContain(`Settled at the first close: ${settled}`)
})

test('counts left as they were need no second explanation either', async () => {
  await countEverything(desk, { 'kits-in-stock': -2, 'blank-labels': -7 })
  await explainEverything(desk)
  await desk.ask('day.close', signing)
  await desk.ask('day.reopen', { reason: 'a late truck' })
  expect(await variances()).toEqual({})
  await desk.ask('day.close', signing)
  expect(await sheet()).toContain('All 5 counts agree')
})

test('a printed label that was explained as lost keeps its reason over a reopening', async () => {
  await countEverything(desk, { 'unused-kit-labels': -1 })
  await explainEverything(desk)
  await desk.ask('day.close', signing)
  await desk.ask('day.reopen', { reason: 'a late truck' })
  expect(await variances()).toEqual({ 'unused-kit-labels': 'lost' })
  await desk.ask('day.close', signing)
  expect(await sheet()).not.toContain('NO REASON GIVEN')
})

test('blank labels found again after a close are found once', async () => {
  await countEverything(desk, { 'blank-labels': -7 })
  await explainEverything(desk)
  await desk.ask('day.close', signing)
  await desk.ask('day.reopen', { reason: 'the roll lay in the truck' })
  await countEverything(desk, { 'blank-labels': 7 })
  expect(await variances()).toEqual({ 'blank-labels': 'unexplained' })
  await explainEverything(desk, 'found')
  await desk.ask('day.close', signing)
  const { accounts } = await desk.ask('ledger', { ledger: 'labels', account: null })
  expect(accounts.find(({ key }) => key === 'written-off')?.balance).toBe(0)
})
