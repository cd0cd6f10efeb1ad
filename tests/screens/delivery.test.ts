import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { digestOf } from '../../electron/desk/manifest-check.ts'
import { officeOver } from '../support/two-desks.ts'
import { ManifestFile } from '../../shared-types/manifest.ts'
import { type BagNumber, grouped, type HandoffNumber } from '../../shared-types/sample-number.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { checkIn, leadPin, openStation, sampleBoth } from '../support/desk.ts'
import { type Afternoon, afternoon, placeBags } from './support/dusk.ts'
import { press, scan, signIn, type } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

interface Papers {
  readonly pdf: Buffer
  readonly json: string
}

/** Four bags in a sealed cooler, signed for by the courier. */
async function delivered(day: Afternoon): Promise<{ handoff: HandoffNumber; papers: Papers }> {
  const { desk, bags, cooler } = day
  await placeBags(desk, bags, cooler)
  await desk.ask('cooler.seal', { cooler, seal: 'WX-44871' })
  const destination = 'Basin Animal Disease Laboratory'
  const { handoff } = await desk.ask('handoff.begin', { destination, coolers: [cooler] })
  await desk.ask('cooler.scanOut', {
    handoff,
    cooler,
    seal: 'WX-44871',
    celsius: 3.4,
    counted: 4,
    words: '',
  })
  await desk.ask('handoff.sign', {
    asItIs: true,
    handoff,
    courier: { name: 'Tam Okoro', organisation: 'Basin Couriers', vehicle: 'grey van' },
    pin: leadPin,
    leadSignature: { how: 'on-paper' },
    courierSignature: { how: 'on-paper' },
  })
  const { pdf, json } = await desk.ask('manifest', { handoff })
  return { handoff, papers: { pdf: Buffer.from(pdf.base64, 'base64'), json: json.text } }
}

describe.skipIf(browserPath === undefined)('a delivery', () => {
  let day: Afternoon
  let papers: Papers
  let handoff: HandoffNumber
  /** Of a deer of the same station, lying in the cooler in place of the first bag listed. */
  let swapped: BagNumber
  let shown: ShownDesk | undefined

  beforeEach(async () => {
    day = await afternoon()
    ;({ handoff, papers } = await delivered(day))
    const third = await sampleBoth(day.desk, await checkIn(day.desk), day.crew.sampler)
    swapped = third.bags[0] as BagNumber
  })
  afterEach(() => shown?.stop())

  const page = () => shown?.page ?? expect.fail('a window is open')

  async function openDeliveries(desk: ShownDesk) {
    shown = desk
    await signIn(page(), 'Orla Vance', leadPin)
    await press(page(), 'F9')
    await page()
      .getByRole('button', { name: /Check a delivery/ })
      .waitFor()
    await press(page(), 'Alt+M')
    await page().getByRole('heading', { name: 'Check a delivery' }).waitFor()
  }

  async function present(name: string, buffer: Buffer) {
    const mimeType = name.endsWith('.pdf') ? 'application/pdf' : 'application/json'
    await page()
      .getByLabel('The manifest that came with it (PDF or JSON)')
      .setInputFiles({ name, mimeType, buffer })
  }

  const verdict = () => page().getByRole('status').filter({ hasText: 'Digest stated' })

  /** What lies in the cooler: every bag listed but the first, and another in its place. */
  async function countTheCooler() {
    for (const bag of [...day.bags.slice(1), swapped]) {
      await scan(page(), bag)
      await page().getByText(grouped(bag)).first().waitFor()
    }
  }

  async function findTheSwap() {
    const extra = page().getByRole('list', { name: 'On no list' })
    await expect.poll(() => extra.innerText()).toContain(grouped(swapped))
    const missing = page().getByRole('table', { name: 'Bags of the list not found yet' })
    const rows = missing.getByRole('row')
    await expect.poll(() => rows.count()).toBe(2)
    await expect.poll(() => rows.last().innerText()).toContain(grouped(day.bags[0] as BagNumber))
  }

  test('a stranger with PDF, JSON and cooler finds the one bag that was swapped', async () => {
    const { desk: far } = await openStation({ station: 'PNE', name: 'Pine Hollow' })
    await openDeliveries(await startDesk(far))
    expect(await barriers(page())).toEqual([])
    await present('manifest.pdf', papers.pdf)
    await expect.poll(() => verdict().innerText()).toContain('the document agrees with itself')
    const fromPaper = await verdict().innerText()
    await present('manifest.json', Buffer.from(papers.json))
    const { digest } = ManifestFile.parse(JSON.parse(papers.json))
    await expect.poll(() => verdict().innerText()).toContain(digest)
    expect(fromPaper).toContain(digest)
    await countTheCooler()
    await findTheSwap()
    expect(await barriers(page())).toEqual([])
    await picture(page(), 'delivery-swapped')
    expect(shown?.complaints).toEqual([])
  })

  test('a file in which the bag was swapped to match the cooler does not agree with the log', async () => {
    await openDeliveries(await startDesk(day.desk))
    const forged = ManifestFile.parse(JSON.parse(papers.json))
    const row = forged.manifest.coolers[0]?.bags[0]
    if (row) row.bag = swapped
    forged.digest = digestOf(forged.manifest)
    await present('manifest.json', Buffer.from(JSON.stringify(forged)))
    const differences = page().getByRole('list', { name: 'Differences' })
    await expect.poll(() => differences.innerText()).toContain(grouped(swapped))
    expect(await differences.innerText()).toContain(grouped(day.bags[0] as BagNumber))
    expect(await barriers(page())).toEqual([])
    await picture(page(), 'delivery-forged')
  })

  test('each seal is read before the count; another one than listed is told, and becomes a finding', async () => {
    await openDeliveries(await startDesk(day.desk))
    await present('manifest.pdf', papers.pdf)
    await expect.poll(() => verdict().innerText()).toContain('log agree')
    await page().getByLabel('Seal on North 1').focus()
    await type(page(), 'WX-44872')
    await page().getByText('the list says WX-44871').waitFor()
    expect(await barriers(page())).toEqual([])
    await picture(page(), 'delivery-seals')
    await page().getByLabel('Scan every bag, or type its number').focus()
    for (const bag of day.bags) await scan(page(), bag)
    await page().getByText('every bag of the list was found').waitFor()
    await page().getByLabel('Received by (laboratory or courier)').fill('Basin receiving dock')
    await press(page(), 'Alt+K')
    await page().getByText('1 differences').first().waitFor()
    const { findings } = await day.desk.ask('receipt', { handoff })
    expect(findings.map(({ what }) => what)).toEqual(['seal'])
  })

  test('of a count that comes as a file the person says which column is what', async () => {
    await openDeliveries(await startDesk(day.desk))
    await present('manifest.pdf', papers.pdf)
    await expect.poll(() => verdict().innerText()).toContain('log agree')
    await page().getByLabel('Received by (laboratory or courier)').fill('Basin receiving dock')
    const rows = day.bags.map((bag, place) => `${place + 1},${place === 0 ? 'leaking' : ''},${bag}`)
    await page()
      .getByLabel('Or the count that came back as a file')
      .setInputFiles({
        name: 'count.csv',
        mimeType: 'text/csv',
        buffer: Buffer.from(['place,state,bag', ...rows].join('\n')),
      })
    const dialog = page().getByRole('dialog', { name: 'Columns of count.csv' })
    await dialog.waitFor()
    await dialog
      .getByRole('group', { name: 'Column of the bag’s number' })
      .getByRole('radio', { name: /^3/ })
      .check()
    await dialog
      .getByRole('group', { name: 'Column that says what is wrong with it' })
      .getByRole('radio', { name: /^2/ })
      .check()
    expect(await barriers(page())).toEqual([])
    await picture(page(), 'delivery-columns')
    await press(page(), 'F12')
    await expect
      .poll(async () =>
        (await day.desk.ask('receipt', { handoff })).findings.map(({ what }) => what),
      )
      .toEqual(['damaged'])
  })

  test('the count is reported, and what differs is a discrepancy with its story', async () => {
    await openDeliveries(await startDesk(day.desk))
    await present('manifest.pdf', papers.pdf)
    await expect.poll(() => verdict().innerText()).toContain('log agree')
    await countTheCooler()
    await page().getByLabel('Received by (laboratory or courier)').focus()
    await type(page(), 'Basin receiving dock')
    await press(page(), 'Alt+K')
    await page().getByText('2 differences').first().waitFor()
    const { findings } = await day.desk.ask('receipt', { handoff })
    expect(findings.map(({ what }) => what).toSorted()).toEqual(['extra', 'missing'])
    const { discrepancies } = await day.desk.ask('discrepancies', {})
    expect(discrepancies.map(({ kind }) => kind)).toContain('bag-not-received')
    expect(discrepancies.map(({ kind }) => kind)).toContain('bag-received-extra')
    await press(page(), 'Alt+U')
    await page().getByRole('dialog', { name: 'Custody of a bag' }).waitFor()
    await scan(page(), day.bags[0] ?? '')
    await page().getByText('did not find it in the delivery').waitFor()
    expect(await barriers(page())).toEqual([])
    await picture(page(), 'delivery-custody')
  })
})

describe.skipIf(browserPath === undefined)('a delivery counted at the office', () => {
  test('is found in the merged record, counted there, and what differs is a discrepancy', async () => {
    const day = await afternoon()
    const { handoff, papers } = await delivered(day)
    const { office, lead } = await officeOver(day)
    const shown = await startDesk(office)
    try {
      await office.as(lead, leadPin)
      await signIn(shown.page, 'Ada Moor', leadPin)
      await press(shown.page, 'F9')
      await shown.page.getByRole('heading', { name: 'Check a delivery' }).waitFor()
      expect(await barriers(shown.page)).toEqual([])
      await shown.page.getByLabel('The manifest that came with it (PDF or JSON)').setInputFiles({
        name: 'm.json',
        mimeType: 'application/json',
        buffer: Buffer.from(papers.json),
      })
      await shown.page.getByText(/log agree/).waitFor()
      await shown.page.getByLabel('Scan every bag, or type its number').focus()
      for (const bag of day.bags.slice(1)) await scan(shown.page, bag)
      await shown.page.getByText('Not found yet: 1').waitFor()
      await shown.page
        .getByLabel('Received by (laboratory or courier)')
        .fill('Basin receiving dock')
      await press(shown.page, 'Alt+K')
      await expect
        .poll(async () =>
          (await office.ask('receipt', { handoff })).findings.map(({ what }) => what),
        )
        .toEqual(['missing'])
      expect(shown.complaints).toEqual([])
    } finally {
      await shown.stop()
      await day.desk.end()
    }
  })
})
