import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, afterEach, beforeEach, describe, expect, test } from 'vitest'
import { programOnPath, thisMachine } from '../../build/browser.ts'
import { checkManifest } from '../../electron/cli/verbs/check-manifest.ts'
import { digestOf } from '../../electron/desk/manifest-check.ts'
import { ManifestFile } from '../../shared-types/manifest.ts'
import {
  type BagNumber,
  type CoolerNumber,
  grouped,
  type HandoffNumber,
} from '../../shared-types/sample-number.ts'
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

let desk: TestDesk
let crew: Crew
let cooler: CoolerNumber
let bags: readonly BagNumber[]
let handoff: HandoffNumber
const scratch = mkdtempSync(join(tmpdir(), 'duskline-delivery-'))
afterAll(() => rmSync(scratch, { recursive: true, force: true }))

/** Two bags in a sealed cooler, given to a courier. */
beforeEach(async () => {
  ;({ desk, crew } = await openStation())
  cooler = await openCooler(desk)
  bags = (await sampleBoth(desk, await checkIn(desk), crew.sampler)).bags as BagNumber[]
  for (const bag of bags) await desk.ask('bag.place', { bag, cooler })
  desk.wait(10)
  await desk.ask('cooler.seal', { cooler, seal: 'K-100' })
})
afterEach(() => desk.end())

async function handOver(): Promise<void> {
  desk.wait(10)
  const begun = await desk.ask('handoff.begin', {
    destination: 'Basin Animal Disease Laboratory',
    coolers: [cooler],
  })
  handoff = begun.handoff
  await desk.ask('cooler.scanOut', {
    handoff,
    cooler,
    seal: 'K-100',
    celsius: 3.5,
    counted: 2,
    words: '',
  })
}

async function sign(): Promise<void> {
  await desk.ask('handoff.sign', {
    asItIs: true,
    handoff,
    courier: { name: 'Tam Ridley', organisation: 'Basin Couriers', vehicle: 'van 7' },
    pin: leadPin,
    leadSignature: { how: 'on-paper' },
    courierSignature: { how: 'on-paper' },
  })
}

const files = () => desk.ask('manifest', { handoff })
const check = async (text: string) => desk.ask('manifest.check', { form: 'json', text })

/** The file with one thing changed; its digest is made to fit again where `isForged`. */
async function changed(change: (file: ManifestFile) => void, isForged: boolean): Promise<string> {
  const file = ManifestFile.parse(JSON.parse((await files()).json.text))
  change(file)
  if (isForged) file.digest = digestOf(file.manifest)
  return JSON.stringify(file)
}

function swapFirst(file: ManifestFile, bag: BagNumber): void {
  const first = file.manifest.coolers[0]?.bags[0]
  if (first) first.bag = bag
}

describe('paper, file and log', () => {
  beforeEach(async () => {
    await handOver()
    await sign()
  })

  test('agree, as JSON and as PDF, in the list and in the digest', async () => {
    const { json, pdf } = await files()
    expect(await check(json.text)).toMatchObject({ state: 'agrees', findings: [] })
    const paper = await desk.ask('manifest.check', { form: 'pdf', base64: pdf.base64 })
    expect(paper).toMatchObject({ state: 'agrees', form: 'pdf', findings: [] })
    expect(paper.bags.map(({ bag }) => bag)).toEqual(bags)
    expect(paper.digests.stated).toBe(paper.digests.log)
  })

  test.skipIf(programOnPath('pdftotext', thisMachine) === undefined)(
    'agree when the text of the PDF is read by another program',
    async () => {
      const path = join(scratch, 'manifest.pdf')
      const { pdf } = await files()
      writeFileSync(path, Buffer.from(pdf.base64, 'base64'))
      const text = execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' })
      for (const bag of bags) expect(text).toContain(grouped(bag))
      const { digests } = await desk.ask('manifest.check', { form: 'pdf', base64: pdf.base64 })
      expect(text.replace(/\s+/g, '')).toContain(digests.log)
    },
  )

  test('differ by one swapped bag, which is named, even when the digest was made to fit', async () => {
    const [other] = (await sampleBoth(desk, await checkIn(desk), crew.sampler)).bags
    const forged = await changed((file) => swapFirst(file, other as BagNumber), true)
    const { state, findings } = await check(forged)
    expect(state).toBe('differs')
    expect(findings.map(({ bag }) => bag)).toEqual([other, bags[0]])
    const careless = await changed((file) => swapFirst(file, other as BagNumber), false)
    expect((await check(careless)).findings[0]?.say).toContain('digest')
  })

  test('differ by a seal, a side or an animal, each in one sentence', async () => {
    const say = async (change: (file: ManifestFile) => void) =>
      (await check(await changed(change, true))).findings.map((each) => each.say).join(' ')
    const first = (file: ManifestFile) => file.manifest.coolers[0]
    expect(await say((file) => Object.assign(first(file) ?? {}, { seal: 'K-101' }))).toContain(
      'has seal K-101 by the file, K-100 by the log',
    )
    expect(
      await say((file) => Object.assign(first(file)?.bags[0] ?? {}, { side: 'right' })),
    ).toContain('holds the right node by the file, the left node by the log')
  })

  test('are told apart at the terminal, with an exit that says so', async () => {
    const good = join(scratch, 'good.json')
    writeFileSync(good, (await files()).json.text)
    const agreed = await checkManifest(good, desk.file)
    expect(agreed.refusal).toBeNull()
    expect(agreed.text).toContain('2 bags. Paper or file and log agree.')
    const bad = join(scratch, 'bad.json')
    writeFileSync(bad, await changed((file) => swapFirst(file, bags[1] as BagNumber), true))
    expect((await checkManifest(bad, desk.file)).refusal?.code).toBe('differs')
    expect((await checkManifest(join(scratch, 'none.pdf'), desk.file)).refusal?.code).toBe(
      'file-not-read',
    )
    expect(await desk.code('manifest.check', { form: 'json', text: '{}' })).toBe('not-a-manifest')
    expect(await desk.code('manifest.check', { form: 'pdf', base64: 'JVBERi0=' })).toBe(
      'not-a-manifest',
    )
  })
})

describe('a corrected manifest', () => {
  beforeEach(async () => {
    await handOver()
    await sign()
  })

  const correct = (more: object = {}) => ({
    handoff,
    takeOff: [bags[1] as string],
    add: [],
    reason: 'found on the bench after the van had left',
    pin: leadPin,
    ...more,
  })

  test('names the one that it replaces, strikes through and is initialled', async () => {
    const before = (await files()).json.text
    const { edition, digest } = await desk.ask('handoff.correct', correct())
    expect(edition).toBe(2)
    const after = ManifestFile.parse(JSON.parse((await files()).json.text))
    expect(after.digest).toBe(digest)
    expect(after.manifest.bags).toBe(1)
    expect(after.manifest.corrections[0]).toMatchObject({
      edition: 2,
      replaces: ManifestFile.parse(JSON.parse(before)).digest,
      by: { initials: 'O. V.' },
      strokes: [{ bag: bags[1], what: 'taken-off' }],
    })
    expect(await check(before)).toMatchObject({ state: 'replaced' })
    const { pdf } = await files()
    const paper = await desk.ask('manifest.check', { form: 'pdf', base64: pdf.base64 })
    expect(paper).toMatchObject({ state: 'agrees', findings: [] })
    expect(paper.bags.map(({ bag }) => bag)).toEqual([bags[0]])
    // The bag is here again, and in one place.
    expect((await desk.ask('coolers', {})).bench.map(({ bag }) => bag)).toEqual([bags[1]])
  })

  test('takes a bag that left unlisted, and needs a reason, a bag and the PIN', async () => {
    const [extra] = (await sampleBoth(desk, await checkIn(desk), crew.sampler)).bags
    const add = [{ bag: extra as string, cooler }]
    await desk.ask('handoff.correct', correct({ takeOff: [], add }))
    const { manifest } = ManifestFile.parse(JSON.parse((await files()).json.text))
    expect(manifest.coolers[0]?.bags.map(({ bag }) => bag)).toContain(extra)
    expect(await desk.code('handoff.correct', correct({ takeOff: [], add }))).toBe(
      'bag-already-on-manifest',
    )
    expect(await desk.code('handoff.correct', correct({ takeOff: [] }))).toBe('nothing-to-correct')
    expect(await desk.code('handoff.correct', correct({ pin: '0000' }))).toBe('pin-wrong')
  })

  test('is not made before the first is signed, and a further one adds to it', async () => {
    const second = await openCooler(desk, 'Box 2')
    const more = (await sampleBoth(desk, await checkIn(desk), crew.sampler)).bags
    for (const bag of more) await desk.ask('bag.place', { bag, cooler: second })
    await desk.ask('cooler.seal', { cooler: second, seal: 'K-200' })
    const first = handoff
    const begun = await desk.ask('handoff.begin', {
      destination: 'Basin Animal Disease Laboratory',
      coolers: [second],
      supplements: first,
    })
    expect(await desk.code('handoff.correct', correct({ handoff: begun.handoff }))).toBe(
      'handoff-not-signed',
    )
    handoff = begun.handoff
    await desk.ask('cooler.scanOut', {
      handoff,
      cooler: second,
      seal: 'K-200',
      celsius: 3,
      counted: 2,
      words: '',
    })
    await sign()
    const { manifest } = ManifestFile.parse(JSON.parse((await files()).json.text))
    expect(manifest.supplements).toBe(first)
  })
})

// EPA Region V manual 905R78115 (1978): in possession, in view, locked, in a secure area, or sealed.
describe('the custody of a bag', () => {
  test('has no hole from the sampler to whoever received it', async () => {
    await handOver()
    await sign()
    desk.wait(120)
    await desk.ask('receipt.count', {
      handoff,
      receivedBy: 'Basin receiving dock',
      counted: {
        how: 'scanned',
        bags: bags.map((bag) => ({ bag, state: 'good' as const, words: '' })),
        coolers: [{ cooler, seal: 'K-100', celsius: 4 }],
      },
    })
    const { steps, holes } = await desk.ask('custody', { bag: bags[0] as string })
    expect(holes).toEqual([])
    expect(steps.map(({ by }) => by)).toEqual([
      'possession',
      'view',
      'sealed',
      'handed-over',
      'possession',
    ])
    expect(steps.at(-1)).toMatchObject({ holder: 'Basin receiving dock', toMs: null })
    for (const [place, step] of steps.slice(1).entries())
      expect(steps[place]?.toMs).toBe(step.fromMs)
    expect(steps[2]).toMatchObject({ seal: 'K-100', words: 'sealed by Orla Vance' })
  })

  test('goes on under lock and in a secure area, and what is left open overnight is a hole', async () => {
    const holes = async () => (await desk.ask('custody', { bag: bags[0] as string })).holes
    await desk.ask('cooler.keep', { cooler, kept: 'locked', where: 'truck 3, key with Orla' })
    await desk.ask('seal.break', { cooler, reason: 'one more bag' })
    await desk.ask('cooler.keep', {
      cooler,
      kept: 'secure-area',
      where: 'evidence room, crew only',
    })
    await closeDay(desk)
    expect(await holes()).toEqual([])
    await desk.ask('day.reopen', { reason: 'for the test' })
    await desk.ask('cooler.keep', { cooler, kept: 'view', where: 'beside the bench' })
    await desk.ask('day.close', { pin: leadPin, aloneBecause: 'alone' })
    expect((await holes()).join()).toContain('neither sealed nor locked up')
    desk.wait(20)
    await desk.ask('cooler.keep', { cooler, kept: 'locked', where: 'truck 3, key with Orla' })
    expect(await holes()).toEqual([])
    const { steps } = await desk.ask('custody', { bag: bags[0] as string })
    expect(steps.map(({ by }) => by)).toEqual([
      'possession',
      'view',
      'sealed',
      'sealed',
      'view',
      'secure-area',
      'view',
      'locked',
    ])
    expect(await desk.code('cooler.seal', { cooler, seal: 'K-100' })).toBe('seal-used-twice')
    expect(steps.at(-1)?.words).toBe('locked: truck 3, key with Orla, by Orla Vance')
    expect(await desk.code('cooler.keep', { cooler, kept: 'locked', where: '' })).toBe('bad-input')
  })

  test('names what breaks it: another seal at the door, or not found there', async () => {
    await handOver()
    await sign()
    const count = (found: readonly BagNumber[], seal: string) =>
      desk.ask('receipt.count', {
        handoff,
        receivedBy: 'Basin receiving dock',
        counted: {
          how: 'scanned',
          bags: found.map((bag) => ({ bag, state: 'good' as const, words: '' })),
          coolers: [{ cooler, seal, celsius: null }],
        },
      })
    await count([bags[0] as BagNumber], 'K-999')
    const holes = async (bag: string) => (await desk.ask('custody', { bag })).holes.join(' ')
    expect(await holes(bags[0] as string)).toContain('did not find seal K-100')
    expect(await holes(bags[1] as string)).toContain('did not find it in the delivery')
  })

  test('shows what was wrong struck through, with initials, and never without it', async () => {
    await handOver()
    await sign()
    await desk.ask('handoff.correct', {
      handoff,
      takeOff: [bags[1] as string],
      add: [],
      reason: 'found on the bench',
      pin: leadPin,
    })
    const { steps } = await desk.ask('custody', { bag: bags[1] as string })
    const struck = steps.find(({ by }) => by === 'handed-over')?.struck
    expect(struck).toMatchObject({ initials: 'O. V.', reason: 'found on the bench' })
    expect(steps.at(-1)).toMatchObject({ by: 'possession', toMs: null })
  })
})

describe('a counter-scan', () => {
  beforeEach(async () => {
    await handOver()
    await sign()
  })

  test('that comes back as a file makes what is missing, extra or damaged a discrepancy', async () => {
    const [extra] = (await sampleBoth(desk, await checkIn(desk), crew.sampler)).bags
    const { findings } = await desk.ask('receipt.count', {
      handoff,
      receivedBy: 'Basin receiving dock',
      counted: {
        how: 'file',
        name: 'count.csv',
        text: `place,remark,bag\n1,leaking,${bags[0]}\n2,,${extra}\n`,
        columns: { bag: 2, condition: 1 },
      },
    })
    expect(findings.map(({ what, bag }) => [what, bag])).toEqual([
      ['missing', bags[1]],
      ['damaged', bags[0]],
      ['extra', extra],
    ])
    const { discrepancies } = await desk.ask('discrepancies', {})
    const found = discrepancies.filter(({ kind }) => kind.startsWith('bag-'))
    expect(found.map(({ kind }) => kind).toSorted()).toEqual([
      'bag-not-received',
      'bag-received-damaged',
      'bag-received-extra',
    ])
    const missing = found.find(({ kind }) => kind === 'bag-not-received')
    await desk.ask('discrepancy.settle', {
      discrepancy: missing?.id ?? '',
      choice: 'acknowledged',
      side: null,
      words: 'it lay under the liner',
    })
    const after = (await desk.ask('discrepancies', {})).discrepancies
    expect(after.find(({ id }) => id === missing?.id)?.state).toBe('settled')
  })

  test('refuses a line it cannot read, and a bag that comes twice', async () => {
    const count = (text: string) => ({
      handoff,
      receivedBy: 'Basin receiving dock',
      counted: {
        how: 'file' as const,
        name: 'count.csv',
        text,
        columns: { bag: 0, condition: null },
      },
    })
    expect(await desk.code('receipt.count', count(`${bags[0]}\nsomething\n`))).toBe('line-not-read')
    expect(await desk.code('receipt.count', count(`${bags[0]}\n${bags[0]}\n`))).toBe(
      'bag-scanned-twice',
    )
  })
})

describe('a logger', () => {
  const reading = {
    timeColumn: 0,
    temperatureColumn: 1,
    skipLines: 0,
    dateOrder: 'year-month-day' as const,
    unit: 'C' as const,
    zone: 'UTC',
  }
  const lines = (...degrees: number[]) =>
    degrees
      .map((celsius, place) => {
        const at = new Date(desk.now - (degrees.length - place) * 600_000)
        return `${at.toISOString().slice(0, 19)},${celsius}`
      })
      .join('\n')

  test('marks the bags that lay in an excursion, not those put in afterwards, and is taken in once', async () => {
    const second = await openCooler(desk, 'Box 2')
    const early = (await sampleBoth(desk, await checkIn(desk), crew.sampler)).bags as BagNumber[]
    for (const bag of early) await desk.ask('bag.place', { bag, cooler: second })
    desk.wait(60)
    const text = lines(3, 12, 13, 4)
    const input = { cooler: second, file: 'box2.csv', text, reading }
    expect(await desk.ask('logger.preview', { cooler: second, text, reading })).toMatchObject({
      readings: 4,
      excursions: 2,
    })
    expect(await desk.ask('logger.import', input)).toEqual({ readings: 4, excursions: 2, gaps: 0 })
    const late = (await sampleBoth(desk, await checkIn(desk), crew.sampler)).bags as BagNumber[]
    for (const bag of late) await desk.ask('bag.place', { bag, cooler: second })
    const cold = await desk.ask('cold', { cooler: second })
    expect(cold.excursions).toHaveLength(1)
    expect(cold.excursions[0]?.bags).toEqual(early.toSorted())
    expect(cold.kinetic).toMatchObject({ peak: 13, windowHours: 0.5 })
    expect(cold.points.every(({ source }) => source === 'box2.csv')).toBe(true)
    const inside = (await desk.ask('cooler', { cooler: second })).bags
    expect(
      inside
        .filter(({ excursion }) => excursion)
        .map(({ bag }) => bag)
        .toSorted(),
    ).toEqual(early.toSorted())
    expect(await desk.code('logger.import', input)).toBe('readings-known')
    expect(await desk.code('logger.import', { ...input, text: lines(38, 38, 39) })).toBe(
      'unit-in-doubt',
    )
    expect(await desk.code('logger.import', { ...input, text: 'nothing' })).toBe('no-readings')
  })

  test('with a hole in it shows the gap', async () => {
    desk.wait(400)
    const at = (minutes: number) => new Date(desk.now - minutes * 60_000).toISOString().slice(0, 19)
    const text = [300, 290, 280, 100, 90].map((minutes) => `${at(minutes)};3.5`).join('\n')
    const { gaps } = await desk.ask('logger.preview', { cooler, text, reading })
    expect(gaps).toEqual([{ fromMs: Date.parse(`${at(280)}Z`), toMs: Date.parse(`${at(100)}Z`) }])
  })
})

test('what must be frozen or delivered next stands first, bench before a later cooler', async () => {
  desk.wait(180)
  await sampleBoth(desk, await checkIn(desk), crew.sampler)
  const { items } = await desk.ask('hold', {})
  expect(items.map(({ name }) => name)).toEqual(['North 1', 'Bench'])
  expect(items[0]?.bags.toSorted()).toEqual(bags.toSorted())
})

test('ice is estimated with its range, and says when there is nothing to fit', async () => {
  const question = { cooler, iceKg: 5, ambientC: 20, tissueKg: 0, tissueC: 4 }
  const stated = await desk.ask('ice', { ...question, wattsPerDegree: 0.5 })
  expect(stated.hours).toBeCloseTo(46.4, 1)
  expect(await desk.code('ice', { ...question, wattsPerDegree: null })).toBe('nothing-to-fit')
  expect(await desk.code('ice', { ...question, wattsPerDegree: 1, ambientC: -2 })).toBe(
    'does-not-melt',
  )
})

describe('packing and class', () => {
  test('are answered and chosen by people, stand on the manifest and are offered the next time', async () => {
    await handOver()
    await desk.ask('handoff.class', {
      handoff,
      transport: 'category-b',
      agreedWith: 'Ms Orrin, Basin Couriers',
      citation: '49 CFR 173.199',
    })
    expect(
      await desk.code('handoff.pack', {
        handoff,
        answers: [{ step: 'dry-ice', answer: 'done' }],
        dryIceKg: null,
        words: '',
      }),
    ).toBe('dry-ice-mass-missing')
    await desk.ask('handoff.pack', {
      handoff,
      answers: [{ step: 'dry-ice', answer: 'done' }],
      dryIceKg: 2.5,
      words: '',
    })
    await sign()
    const { manifest } = ManifestFile.parse(JSON.parse((await files()).json.text))
    expect(manifest).toMatchObject({ transport: { class: 'category-b' }, dryIceKg: 2.5 })
    const { digest } = ManifestFile.parse(JSON.parse((await files()).json.text))
    expect((await desk.ask('handoff', { handoff })).digest).toBe(digest)
    expect(
      await desk.code('handoff.pack', {
        handoff,
        answers: [{ step: 'list', answer: 'done' }],
        dryIceKg: null,
        words: '',
      }),
    ).toBe('handoff-not-loading')
  })

  test('a handoff nobody classed says so, instead of choosing', async () => {
    await handOver()
    await sign()
    const { manifest } = ManifestFile.parse(JSON.parse((await files()).json.text))
    expect(manifest.transport).toBeNull()
  })
})
