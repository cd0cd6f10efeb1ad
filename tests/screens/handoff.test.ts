import { createHash } from 'node:crypto'
import type { Page } from 'playwright-core'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { z } from 'zod'
import { type Json, canonicalJson } from '../../db/canonical-json.ts'
import { HandoffSigned } from '../../shared-types/handoff.ts'
import { Manifest } from '../../shared-types/manifest.ts'
import { DeskId, coolerNumber, grouped } from '../../shared-types/sample-number.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { pageTexts } from '../print/read-pdf.ts'
import { leadPin } from '../support/desk.ts'
import { type Afternoon, afternoon, placeBags, saved } from './support/dusk.ts'
import { focused, press, scan, signIn, type } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

/** Fields filled one after the other, Enter after each. */
async function fields(page: Page, ...texts: string[]): Promise<void> {
  for (const text of texts) {
    await type(page, text)
    await press(page, 'Enter')
  }
}

describe.skipIf(browserPath === undefined)('the handoff', () => {
  let shown: ShownDesk
  let day: Afternoon

  /** Four bags in a cooler sealed with WX-44871, and the lead at the handoff. */
  beforeEach(async () => {
    day = await afternoon()
    await placeBags(day.desk, day.bags, day.cooler)
    await day.desk.ask('cooler.seal', { cooler: day.cooler, seal: 'WX-44871' })
    shown = await startDesk(day.desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await press(shown.page, 'F9')
    await shown.page.getByRole('checkbox', { name: /North 1/ }).waitFor()
  })
  afterEach(() => shown.stop())

  const handoffs = async () => (await day.desk.ask('handoffs', {})).handoffs
  const alerts = () => shown.page.getByRole('alert').filter({ hasText: /Not done|Wrong label/ })

  /** Enter begins with every sealed cooler for the station's laboratory. */
  async function begin() {
    await press(shown.page, 'Enter')
    await expect.poll(() => focused(shown.page)).toMatch(/^Scan the label/)
  }

  async function takeCooler() {
    await scan(shown.page, day.cooler)
    await expect.poll(() => focused(shown.page)).toBe('Number on the seal')
  }

  /** Told once what is open of packing and class, the lead hands over all the same. */
  async function handOverAsItIs() {
    await expect
      .poll(() => focused(shown.page), { timeout: 20_000 })
      .toContain('Hand over as it is')
    await press(shown.page, 'Enter')
  }

  async function signOnPaper() {
    await fields(shown.page, 'Tam Okoro', '', '', '')
    await expect.poll(() => focused(shown.page)).toBe('PIN of Orla Vance')
    await fields(shown.page, leadPin)
    await handOverAsItIs()
    await shown.page.getByText('Tam Okoro has 1 cooler').first().waitFor()
  }

  /** The one stroke of the courier's signature, as the log keeps it. */
  async function strokeInLog() {
    const { text } = await day.desk.ask('table', { what: 'entries', format: 'json' })
    const entries = z
      .array(z.looseObject({ kind: z.string(), body: z.string() }))
      .parse(JSON.parse(text))
    const signed = entries.find(({ kind }) => kind === 'handoff.signed')
    const { courierSignature } = HandoffSigned.parse(JSON.parse(signed?.body ?? ''))
    return courierSignature.how === 'drawn' ? (courierSignature.strokes[0] ?? []) : []
  }

  async function load() {
    await begin()
    await takeCooler()
    await fields(shown.page, 'WX-44871', '3.4', '4')
    await expect.poll(() => focused(shown.page)).toBe('Courier’s name')
  }

  test('coolers are loaded and signed for on paper by keyboard and scanner alone', async () => {
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'handoff-begin')
    await begin()
    await takeCooler()
    expect(await barriers(shown.page)).toEqual([])
    // 38 °F = 3.3 °C: NIST Special Publication 811 (2008), appendix B.8, from memory.
    await fields(shown.page, 'wx-44871', '38F')
    await shown.page.getByText('= 3.3 °C (38 °F)').waitFor()
    await picture(shown.page, 'handoff-reading')
    await fields(shown.page, '4')
    await expect.poll(() => focused(shown.page)).toBe('Courier’s name')
    await shown.page.getByRole('row', { name: /North 1.*loaded/ }).waitFor()
    expect(await barriers(shown.page)).toEqual([])

    await fields(shown.page, 'Tam Okoro', 'Basin Couriers', 'grey van')
    await expect.poll(() => focused(shown.page)).toContain('pen on paper')
    await picture(shown.page, 'handoff-sign')
    await press(shown.page, 'Enter')
    await expect.poll(() => focused(shown.page)).toBe('PIN of Orla Vance')
    await fields(shown.page, leadPin)
    await handOverAsItIs()
    await shown.page.getByText('Tam Okoro has 1 cooler with 4 bags').first().waitFor()
    expect(await barriers(shown.page)).toEqual([])

    const manifest = await saved(shown.page, 'Alt+S')
    const text = (await pageTexts(manifest.bytes)).join(' ')
    expect(manifest.name).toMatch(/\.pdf$/)
    for (const words of [
      'WX-44871',
      'Tam Okoro',
      'grey van',
      'Basin Animal Disease Laboratory',
      ...day.bags.map(grouped),
    ])
      expect(text).toContain(words)
    await picture(shown.page, 'handoff-signed')
    const [signed] = await handoffs()
    expect(signed).toMatchObject({ state: 'signed', courier: { name: 'Tam Okoro' } })
    expect(signed?.coolers[0]?.scanned).toMatchObject({
      celsius: 3.3,
      counted: 4,
      seal: 'WX-44871',
    })
    expect(shown.complaints).toEqual([])
  })

  test('packing and class that are still open are asked about once, each by its name', async () => {
    await load()
    await fields(shown.page, 'Tam Okoro', '', '', '')
    await expect.poll(() => focused(shown.page)).toBe('PIN of Orla Vance')
    await fields(shown.page, leadPin)
    await shown.page
      .getByText('Still open: 9 of 9 packing steps not answered; class for transport not chosen.')
      .first()
      .waitFor()
    expect((await handoffs())[0]?.state).toBe('loading')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'handoff-open')
    await handOverAsItIs()
    await shown.page.getByText('Tam Okoro has 1 cooler').first().waitFor()
  })

  test('a temperature that would be right in °F is asked about on the way out, too', async () => {
    await begin()
    await takeCooler()
    await fields(shown.page, 'WX-44871', '38', '4')
    await shown.page.getByText('38 °F would lie near them').first().waitFor()
    expect((await handoffs())[0]?.coolers[0]?.scanned).toBeNull()
    await shown.page.getByLabel('Temperature').fill('38F')
    await shown.page.getByLabel('Temperature').press('Enter')
    await expect.poll(async () => (await handoffs())[0]?.coolers[0]?.scanned?.celsius).toBe(3.3)
  })

  test('the manifest is saved for machines, proves its digest and names no hunter', async () => {
    await load()
    await signOnPaper()
    const json = new TextDecoder().decode((await saved(shown.page, 'Alt+J')).bytes)
    const { digest, manifest } = z
      .strictObject({ digest: z.string(), manifest: Manifest })
      .parse(JSON.parse(json))
    expect(manifest.bags).toBe(4)
    // Canonical form after RFC 8785, digest after FIPS 180-4 (SHA-256).
    const canonical = canonicalJson(manifest as unknown as Json)
    expect(createHash('sha256').update(canonical).digest('hex')).toBe(digest)
    expect((await handoffs())[0]?.digest).toBe(digest)
    await shown.page.getByText(digest).first().waitFor()

    const csv = new TextDecoder().decode((await saved(shown.page, 'Alt+C')).bytes)
    for (const bag of day.bags) expect(csv).toContain(bag)
    for (const { animal } of manifest.coolers.flatMap(({ bags }) => bags)) {
      const { facts } = await day.desk.ask('animal', { animal })
      for (const word of [facts.hunter, facts.tag]) expect(json + csv).not.toContain(word)
    }
  })

  test('a seal that reads otherwise stops the cooler', async () => {
    await begin()
    await takeCooler()
    await fields(shown.page, 'WX-44817', '3.4', '4')
    await shown.page.getByText('The seal reads WX-44817').first().waitFor()
    expect(await focused(shown.page)).toBe('Number on the seal')
    expect((await handoffs())[0]?.coolers[0]?.scanned).toBeNull()
    expect(await barriers(shown.page)).toEqual([])
  })

  test('a count that differs must be explained, and the list shows that it does', async () => {
    await begin()
    await takeCooler()
    await fields(shown.page, 'WX-44871', '3.4', '3')
    await shown.page.getByText('3 bags counted, 4 by the log.').first().waitFor()
    await expect.poll(() => focused(shown.page)).toBe('If the count differs: why')
    await fields(shown.page, 'one bag leaked and stays here')
    await shown.page
      .getByRole('row', { name: /loaded, count differs.*4 by the log: one bag leaked/ })
      .waitFor()
    await picture(shown.page, 'handoff-differs')
  })

  test('neither seal nor count of the log is shown before they are read off the cooler', async () => {
    await begin()
    await takeCooler()
    const main = await shown.page.locator('.handoff-main').innerText()
    expect(main).not.toContain('WX-44871')
    expect(main).not.toMatch(/\b4\b/)
  })

  test('a cooler that is not of this handoff is refused', async () => {
    await begin()
    await scan(shown.page, coolerNumber(DeskId.parse('26KRVA'), 9))
    await alerts().filter({ hasText: 'is not part of this handoff' }).waitFor()
    await scan(shown.page, day.bags[0] ?? '')
    await alerts().filter({ hasText: 'That is a left bag label' }).waitFor()
  })

  test('a signature drawn on the screen goes into the log as strokes of a field three by one', async () => {
    await load()
    await type(shown.page, 'Tam Okoro')
    await press(shown.page, 'Tab Tab Tab')
    await press(shown.page, 's')
    const field = shown.page.getByRole('img', { name: 'The courier signs here' })
    await field.scrollIntoViewIfNeeded()
    const box = (await field.boundingBox()) ?? expect.fail('the field is on the screen')
    expect(box.width / box.height).toBeCloseTo(3, 1)
    await shown.page.mouse.move(box.x + box.width * 0.1, box.y + box.height * 0.5)
    await shown.page.mouse.down()
    await shown.page.mouse.move(box.x + box.width * 0.9, box.y + box.height * 0.5, { steps: 12 })
    await shown.page.mouse.up()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'handoff-drawn')
    await shown.page.getByLabel('PIN of Orla Vance').focus()
    await fields(shown.page, leadPin)
    await handOverAsItIs()
    await shown.page.getByText('Tam Okoro has 1 cooler').first().waitFor()
    const points = await strokeInLog()
    expect(points.length).toBeGreaterThan(3)
    expect(points[0]?.x).toBeCloseTo(0.1, 1)
    expect(points.at(-1)?.x).toBeCloseTo(0.9, 1)
    for (const { y } of points) expect(y).toBeCloseTo(0.5, 1)
  })

  test('a handoff is called off with a reason, and the coolers stay', async () => {
    await begin()
    await press(shown.page, 'Alt+X')
    await shown.page.getByRole('dialog', { name: 'Call this handoff off' }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await fields(shown.page, 'the courier did not come')
    await shown.page.getByText('was called off; its coolers stayed here').first().waitFor()
    const [cooler] = (await day.desk.ask('coolers', {})).coolers
    expect(cooler?.state).toBe('sealed')
    await press(shown.page, 'Alt+A')
    await shown.page.getByRole('checkbox', { name: /North 1/ }).waitFor()
  })

  test('earlier handoffs stay listed with their documents', async () => {
    await load()
    await signOnPaper()
    await press(shown.page, 'F9')
    const others = shown.page.getByRole('region', { name: 'Other handoffs' })
    await others.getByRole('button', { name: /^Manifest/ }).waitFor()
    await shown.page.getByText('No sealed cooler is here to hand over.').first().waitFor()
    expect(await others.innerText()).toContain('North 1 for Basin Animal Disease Laboratory')
    expect(await barriers(shown.page)).toEqual([])
  })

  test('packing and custody are told in short, with their sources, and defer to the carrier', async () => {
    const caution = await shown.page.getByRole('complementary').innerText()
    // 49 CFR 173.199(a), (b): three layers, absorbent; 49 CFR 173.217: dry ice vents, net mass by air;
    // EPA Region V manual 905R78115 (1978): custody.
    for (const words of [
      /Three layers/,
      /absorbent/,
      /must vent/,
      /net mass/,
      /in sight or locked/,
    ])
      expect(caution).toMatch(words)
    for (const source of ['49 CFR 173.199', '49 CFR 173.217', '905R78115'])
      expect(caution).toContain(source)
    expect(caution).toMatch(/carrier, the laboratory and local rules ask goes before/)
  })
})
