import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import type { AnimalNumber, KitNumber } from '../../shared-types/sample-number.ts'
import type { TissueSite } from '../../shared-types/tissue.ts'
import {
  type Crew,
  checkIn,
  kitFor,
  leadPin,
  openCooler,
  openStation,
  sampleBoth,
  type TestDesk,
} from '../support/desk.ts'

let desk: TestDesk
let crew: Crew
beforeAll(async () => {
  ;({ desk, crew } = await openStation())
})
beforeEach(() => desk.sit(crew.sampler))
afterAll(() => desk.end())

/** An animal in the sampler's hands, with a kit of its own open on it. */
async function begun(): Promise<{ animal: AnimalNumber; kit: KitNumber }> {
  const animal = await checkIn(desk)
  const kit = await kitFor(desk, animal)
  await desk.ask('animal.assign', { animal, sampler: crew.sampler })
  await desk.ask('kit.open', { animal, kit })
  return { animal, kit }
}

async function bagFor(animal: AnimalNumber, site: TissueSite) {
  const { sites } = await desk.ask('animal', { animal })
  return sites.find((each) => each.site === site)?.expectedBag ?? ''
}

async function bagged(animal: AnimalNumber, site: TissueSite) {
  await desk.ask('tissue.check', { animal, site, check: 'lymph-node', sizeMm: 22 })
  const bag = await bagFor(animal, site)
  await desk.ask('bag.seal', { animal, site, bag })
  return bag
}

const kitsInHand = async () => (await desk.ask('bench', { sampler: crew.sampler })).kitsInHand

describe('a kit', () => {
  test('is used once: its labels never end up on a second animal', async () => {
    const { kit } = await begun()
    const other = await checkIn(desk)
    await desk.ask('animal.assign', { animal: other, sampler: crew.sampler })
    const before = await kitsInHand()
    expect(await desk.code('kit.open', { animal: other, kit })).toBe('kit-already-used')
    expect(await kitsInHand()).toBe(before)
    expect((await desk.ask('animal', { animal: other })).kitOpened).toBe(false)
  })

  test('that was reserved for nobody is opened by scanning any of its labels', async () => {
    const { kits } = await desk.ask('labels.printKits', {
      for: { whom: 'reserve', count: 2 },
      stock: 'sheet-letter',
    })
    const [kit = '', spare = ''] = kits
    const animal = await checkIn(desk)
    await desk.ask('animal.assign', { animal, sampler: crew.sampler })
    expect((await desk.ask('kit.open', { animal, kit })).kit).toBe(kit)
    const before = await kitsInHand()
    expect(await desk.code('kit.open', { animal, kit })).toBe('kit-already-open')
    expect(await desk.code('kit.open', { animal, kit: spare })).toBe('animal-has-kit')
    expect(await kitsInHand()).toBe(before)
  })

  test('printed for one animal is not opened on another', async () => {
    const [mine, theirs] = [await checkIn(desk), await checkIn(desk)]
    const kit = await kitFor(desk, theirs)
    await desk.ask('animal.assign', { animal: mine, sampler: crew.sampler })
    expect(await desk.code('kit.open', { animal: mine, kit })).toBe('kit-of-another-animal')
  })

  test('is printed for an animal in the line, not for one that has left it', async () => {
    const animal = await checkIn(desk)
    await desk.ask('animal.leave', { animal, reason: 'had to drive home' })
    const asked = { for: { whom: 'animal', animal }, stock: 'roll-51x25' } as const
    expect(await desk.code('labels.printKits', asked)).toBe('animal-not-in-line')
  })
})

describe('a bag', () => {
  test('is sealed once', async () => {
    const { animal } = await begun()
    const bag = await bagged(animal, 'left')
    expect(await desk.code('bag.seal', { animal, site: 'left', bag })).toBe('site-already-bagged')
    expect(await desk.code('bag.seal', { animal, site: 'right', bag })).toBe('wrong-side')
  })

  test('of another animal is refused, whichever side it is', async () => {
    const [one, two] = [await begun(), await begun()]
    await desk.ask('tissue.check', {
      animal: one.animal,
      site: 'left',
      check: 'unsure',
      sizeMm: null,
    })
    const wrong = {
      animal: one.animal,
      site: 'left',
      bag: await bagFor(two.animal, 'left'),
    } as const
    expect(await desk.code('bag.seal', wrong)).toBe('bag-of-another-kit')
  })

  test('is not sealed over wrong tissue; the second look is what counts', async () => {
    const { animal } = await begun()
    const look = { animal, site: 'left', sizeMm: null } as const
    const told = await desk.ask('tissue.check', { ...look, check: 'salivary-gland' })
    expect(told).toMatchObject({ good: false })
    const bag = await bagFor(animal, 'left')
    expect(await desk.code('bag.seal', { animal, site: 'left', bag })).toBe('wrong-tissue')
    expect((await desk.ask('tissue.check', { ...look, check: 'lymph-node' })).good).toBe(true)
    await desk.ask('bag.seal', { animal, site: 'left', bag })
  })

  test('that is torn is discarded, and its side done again under a new copy of its label', async () => {
    const { animal } = await begun()
    const bag = await bagged(animal, 'left')
    await desk.ask('bag.discard', { bag, reason: 'torn at the zip' })
    expect(await desk.code('bag.discard', { bag, reason: 'torn at the zip' })).toBe(
      'bag-already-discarded',
    )
    await desk.ask('tissue.check', { animal, site: 'left', check: 'lymph-node', sizeMm: 20 })
    expect(await desk.code('bag.seal', { animal, site: 'left', bag })).toBe('label-void')
    const { copy } = await desk.ask('label.reprint', {
      number: bag,
      reason: 'torn',
      words: '',
      stock: 'roll-51x25',
    })
    expect(copy).toBe(2)
    await desk.ask('bag.seal', { animal, site: 'left', bag })
    await bagged(animal, 'right')
    expect((await desk.ask('animal.finish', { animal })).outcome).toBe('both')
  })

  test('discarded after the animal was finished takes its side with it', async () => {
    const animal = await checkIn(desk)
    const { bags } = await sampleBoth(desk, animal, crew.sampler)
    const finishedAt = async () => {
      const { text } = await desk.ask('table', { what: 'animals', format: 'json' })
      return (JSON.parse(text) as { finished: string }[])[0]?.finished
    }
    const before = await finishedAt()
    desk.wait(30)
    await desk.ask('bag.discard', { bag: bags[0] ?? '', reason: 'dropped in the mud' })
    expect((await desk.ask('animal', { animal })).outcome).toBe('one')
    expect(await finishedAt()).toBe(before)
    const { discrepancies } = await desk.ask('discrepancies', {})
    expect(discrepancies).toEqual([])
  })
})

test('consent withdrawn while the animal is in hand stops the bench; its bags are discarded, and it leaves', async () => {
  const animal = await checkIn(desk)
  const kit = await kitFor(desk, animal)
  await desk.ask('animal.assign', { animal, sampler: crew.sampler })
  await desk.ask('kit.open', { animal, kit })
  await desk.ask('tissue.check', { animal, site: 'left', check: 'lymph-node', sizeMm: 22 })
  const view = await desk.ask('animal', { animal })
  const bag = view.sites.find(({ site }) => site === 'left')?.expectedBag ?? ''
  await desk.ask('bag.seal', { animal, site: 'left', bag })
  const facts = { ...view.facts, consent: 'refused' as const }
  await desk.sit(crew.lead, leadPin)
  await desk.ask('animal.amend', { animal, facts, reason: 'the hunter has changed their mind' })
  const look = { animal, site: 'right', check: 'lymph-node', sizeMm: 22 } as const
  expect(await desk.code('tissue.check', look)).toBe('consent-withdrawn')
  expect(await desk.code('animal.finish', { animal })).toBe('consent-withdrawn')
  const leaving = { animal, reason: 'does not agree' }
  expect(await desk.code('animal.leave', leaving)).toBe('bags-already-sealed')
  await desk.ask('bag.discard', { bag, reason: 'no consent' })
  await desk.ask('animal.leave', leaving)
  expect((await desk.ask('animal', { animal })).state).toBe('left')
})

describe('an animal', () => {
  test('is worked by the sampler who holds it, or a lead', async () => {
    const { animal } = await begun()
    await desk.sit(crew.lead, leadPin)
    await desk.ask('tissue.check', { animal, site: 'left', check: 'lymph-node', sizeMm: 22 })
    await desk.ask('animal.assign', { animal, sampler: crew.lead })
    await desk.sit(crew.sampler)
    const look = { animal, site: 'right', check: 'lymph-node', sizeMm: 22 } as const
    expect(await desk.code('tissue.check', look)).toBe('not-your-animal')
    expect(await desk.code('animal.assign', { animal, sampler: crew.lead })).toBe(
      'only-for-yourself',
    )
  })

  test('is finished with a reason for each side that was not taken, and its loose labels void', async () => {
    const { animal, kit } = await begun()
    await bagged(animal, 'left')
    expect(await desk.code('animal.finish', { animal })).toBe('site-still-open')
    const missed = { animal, site: 'right', reason: 'other', words: '' } as const
    expect(await desk.code('tissue.miss', missed)).toBe('reason-needed')
    await desk.ask('tissue.miss', { ...missed, reason: 'shot-away' })
    expect((await desk.ask('animal.finish', { animal })).outcome).toBe('one')
    const { latest } = await desk.ask('kits', {})
    const labels = latest.find((each) => each.kit === kit)?.labels ?? []
    expect(labels.map(({ number, fate }) => [number.charAt(10), fate])).toEqual([
      ['H', 'used'],
      ['K', 'used'],
      ['L', 'used'],
      ['R', 'void'],
    ])
  })

  test('with a bag sealed neither leaves nor goes back in the line', async () => {
    const { animal } = await begun()
    const bag = await bagged(animal, 'left')
    for (const command of ['animal.leave', 'animal.putBack'] as const)
      expect(await desk.code(command, { animal, reason: 'hunter in a hurry' })).toBe(
        'bags-already-sealed',
      )
    await desk.ask('bag.discard', { bag, reason: 'torn at the zip' })
    await desk.ask('animal.putBack', { animal, reason: 'hunter in a hurry' })
    expect((await desk.ask('animal', { animal })).state).toBe('waiting')
  })

  test('without tissue that can be taken comes out as none, and needs no kit', async () => {
    const animal = await checkIn(desk)
    await desk.ask('animal.assign', { animal, sampler: crew.sampler })
    for (const site of ['left', 'right'] as const)
      await desk.ask('tissue.miss', { animal, site, reason: 'spoiled', words: '' })
    expect((await desk.ask('animal.finish', { animal })).outcome).toBe('none')
  })
})

describe('a tissue that the station begins to take during the day', () => {
  test('is bagged from a kit that was labelled before, under a label printed for it then', async () => {
    const { animal } = await begun()
    await desk.sit(crew.lead, leadPin)
    const { settings } = await desk.ask('who', {})
    const obex = { site: 'obex', kept: 'fresh' } as const
    await desk.ask('settings.change', {
      settings: { ...settings, tissues: [...settings.tissues, obex] },
    })
    await desk.sit(crew.sampler)
    await desk.ask('tissue.check', { animal, site: 'obex', check: 'obex', sizeMm: null })
    const bag = await bagFor(animal, 'obex')
    expect(await desk.refusal('bag.seal', { animal, site: 'obex', bag })).toMatchObject({
      code: 'label-void',
      next: 'Reprint it on the kits screen and use the new copy.',
    })
    const why = { reason: 'other', words: '', stock: 'roll-51x25' } as const
    expect((await desk.ask('label.reprint', { number: bag, ...why })).copy).toBe(1)
    await desk.ask('bag.seal', { animal, site: 'obex', bag })
    await desk.sit(crew.lead, leadPin)
    await desk.ask('settings.change', { settings })
  })
})

describe('tissue in formalin', () => {
  test('is refused by a cooler on ice, and taken by one at room temperature', async () => {
    await desk.sit(crew.lead, leadPin)
    const { settings } = await desk.ask('who', {})
    const tissues = settings.tissues.map((each) =>
      each.site === 'right' ? ({ site: 'right', kept: 'formalin' } as const) : each,
    )
    await desk.ask('settings.change', { settings: { ...settings, tissues } })
    await desk.sit(crew.sampler)
    const { animal } = await begun()
    await bagged(animal, 'left')
    const fixed = await bagged(animal, 'right')
    const ice = await openCooler(desk, 'Ice 1')
    const refused = await desk.refusal('bag.place', { bag: fixed, cooler: ice })
    expect(refused).toMatchObject({ code: 'wrong-keeping' })
    expect(refused.next).toContain('must never freeze')
    const { cooler } = await desk.ask('cooler.open', {
      name: 'Jars',
      keeping: 'room',
      capacity: null,
    })
    await desk.ask('bag.place', { bag: fixed, cooler })
    const inside = await desk.ask('cooler', { cooler })
    expect(inside.bags).toMatchObject([{ bag: fixed, kept: 'formalin', holdUntilMs: null }])
  })
})
