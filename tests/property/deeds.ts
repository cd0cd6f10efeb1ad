/** What people do at a station, as data: each deed picks its things by chance, so many are wrong. */
import fc from 'fast-check'
import { alone } from '../support/close.ts'
import { leadPin } from '../support/desk.ts'
import { factsOf } from '../support/station.ts'
import type { Floor } from './floor.ts'

const missing = '26KRVA9999A0'
const reason = 'because of the day'

function pick<T>(list: readonly T[], chance: number): T | string {
  return list[chance % Math.max(1, list.length)] ?? missing
}

const site = (chance: number) => (chance % 2 === 0 ? 'left' : 'right')
const checks = [
  'lymph-node',
  'lymph-node',
  'lymph-node',
  'unsure',
  'fat',
  'salivary-gland',
] as const

type Deed = (floor: Floor, a: number, b: number, c: number) => Promise<unknown>

async function checkIn(floor: Floor, a: number) {
  const tag = `T${a % 60}`
  const facts = factsOf({ tag, age: a % 9 === 0 ? 'young' : 'adult' })
  const result = await floor.tell('animal.checkIn', { facts, contact: null })
  if (!result.ok) return
  if (floor.tags.has(tag)) throw new Error(`tag ${tag} was taken in twice`)
  floor.tags.add(tag)
  floor.animals.push(result.value.animal)
}

async function sealBag(floor: Floor, animal: string, bag: string, side: 'left' | 'right') {
  const sealed = await floor.tell('bag.seal', { animal, site: side, bag })
  if (sealed.ok) floor.bagsAt.set(bag, 'bench')
}

/** One animal from the line to its outcome, as a sampler would; any step may be refused. */
async function workThrough(floor: Floor, a: number, b: number) {
  const [animal, kit] = [pick(floor.animals, a), pick(floor.kits, b)]
  await floor.tell('animal.assign', { animal, sampler: floor.crew.sampler })
  await floor.tell('kit.open', { animal, kit })
  const view = await floor.tell('animal', { animal })
  for (const { site, expectedBag } of view.ok ? view.value.sites : []) {
    await floor.tell('tissue.check', { animal, site, check: 'lymph-node', sizeMm: 21 })
    await sealBag(floor, animal, expectedBag ?? missing, site === 'right' ? 'right' : 'left')
  }
  await floor.tell('animal.finish', { animal })
}

async function place(floor: Floor, bag: string, cooler: string) {
  const placed = await floor.tell('bag.place', { bag, cooler })
  if (placed.ok) floor.bagsAt.set(bag, cooler)
}

/** The line and the bench are cleared, as far as the coolers go. */
async function clearUp(floor: Floor) {
  for (const animal of floor.animals) {
    await floor.tell('animal.finish', { animal })
    await floor.tell('animal.leave', { animal, reason })
  }
  for (const [bag, at] of floor.bagsAt)
    if (at === 'bench') for (const cooler of floor.coolers) await place(floor, bag, cooler)
}

async function closeDay(floor: Floor, a: number) {
  if (a % 4 > 0) await clearUp(floor)
  const close = await floor.tell('close', {})
  for (const { item, key } of close.ok ? close.value.items : []) {
    await floor.tell('count.enter', { item, counted: 0 })
    const seen = await floor.tell('close', {})
    const expected = seen.ok ? seen.value.items.find((each) => each.key === key)?.expected : 0
    const off = a % 3 === 0 ? 0 : (a % 5) - 2
    await floor.tell('count.enter', { item, counted: Math.max(0, (expected ?? 0) + off) })
    const reasons = ['lost', 'found', 'wrong-opening-count', 'spoiled-not-recorded'] as const
    await floor.tell('variance.explain', { item, reason: reasons[a % 4] ?? 'lost', words: '' })
  }
  const closed = await floor.tell('day.close', { pin: leadPin, aloneBecause: alone })
  if (closed.ok && [...floor.bagsAt.values()].includes('bench'))
    throw new Error('the day was closed over bags on the bench')
}

async function handOff(floor: Floor, a: number, b: number) {
  const cooler = pick(floor.coolers, a)
  const begun = await floor.tell('handoff.begin', {
    destination: 'Basin Laboratory',
    coolers: [cooler],
  })
  if (begun.ok) floor.handoffs.push(begun.value.handoff)
  const handoff = pick(floor.handoffs, b)
  const view = await floor.tell('handoff', { handoff })
  for (const each of view.ok ? view.value.coolers : [])
    await floor.tell('cooler.scanOut', {
      handoff,
      cooler: each.cooler,
      seal: b % 5 === 0 ? 'WRONG-1' : (each.seal ?? 'NONE'),
      celsius: (a % 20) - 5,
      counted: each.bags,
      words: '',
    })
  const signed = await floor.tell('handoff.sign', {
    asItIs: true,
    handoff,
    courier: { name: 'Tam Ridley', organisation: '', vehicle: '' },
    pin: leadPin,
    leadSignature: { how: 'on-paper' },
    courierSignature: { how: 'on-paper' },
  })
  if (!signed.ok || !view.ok) return
  const given = new Set<string>(view.value.coolers.map((each) => each.cooler))
  for (const [bag, at] of floor.bagsAt) if (given.has(at)) floor.bagsAt.set(bag, 'handed off')
}

const accounts = (floor: Floor) =>
  [
    { in: 'stock' },
    { in: 'missing' },
    { in: 'spoiled' },
    { in: 'delivered' },
    { in: 'used' },
    ...floor.people.map((person) => ({ in: 'hands', person }) as const),
  ] as const

/** Each deed with how often it comes. */
const deeds: readonly (readonly [weight: number, deed: Deed])[] = [
  [14, checkIn],
  [14, workThrough],
  [
    3,
    (f, a, b) =>
      f.tell('animal.assign', { animal: pick(f.animals, a), sampler: pick(f.people, b) }),
  ],
  [3, (f, a, b) => f.tell('kit.open', { animal: pick(f.animals, a), kit: pick(f.kits, b) })],
  [
    3,
    (f, a, b, c) =>
      f.tell('tissue.check', {
        animal: pick(f.animals, a),
        site: site(b),
        check: checks[c % 6] ?? 'fat',
        sizeMm: null,
      }),
  ],
  [3, (f, a, b, c) => sealBag(f, pick(f.animals, a), pick(f.bagLabels, b), site(c))],
  [
    2,
    (f, a, b) =>
      f.tell('tissue.miss', {
        animal: pick(f.animals, a),
        site: site(b),
        reason: 'spoiled',
        words: '',
      }),
  ],
  [2, (f, a) => f.tell('animal.finish', { animal: pick(f.animals, a) })],
  [2, (f, a) => f.tell('animal.leave', { animal: pick(f.animals, a), reason })],
  [2, (f, a) => f.tell('animal.putBack', { animal: pick(f.animals, a), reason })],
  [
    3,
    async (f, a) => {
      const bag = pick(f.bagLabels, a)
      if ((await f.tell('bag.discard', { bag, reason })).ok) f.bagsAt.set(bag, 'discarded')
    },
  ],
  [14, (f, a, b) => place(f, pick([...f.bagsAt.keys()], a), pick(f.coolers, b))],
  [
    2,
    async (f, a) => {
      const bag = pick([...f.bagsAt.keys()], a)
      if ((await f.tell('bag.takeOut', { bag, reason })).ok) f.bagsAt.set(bag, 'bench')
    },
  ],
  [
    3,
    async (f, a) => {
      const keeping = (['chilled', 'chilled', 'frozen', 'room'] as const)[a % 4] ?? 'chilled'
      const opened = await f.tell('cooler.open', {
        name: `C${a % 12}`,
        keeping,
        capacity: (a % 20) + 1,
      })
      if (opened.ok) f.coolers.push(opened.value.cooler)
    },
  ],
  [2, (f, a, b) => f.tell('cooler.read', { cooler: pick(f.coolers, a), celsius: (b % 30) - 10 })],
  [6, (f, a, b) => f.tell('cooler.seal', { cooler: pick(f.coolers, a), seal: `S-${b % 20}` })],
  [3, (f, a) => f.tell('seal.break', { cooler: pick(f.coolers, a), reason })],
  [
    3,
    (f, a, b, c) =>
      f.tell('kits.move', {
        from: accounts(f)[a % 8] ?? { in: 'stock' },
        to: accounts(f)[b % 8] ?? { in: 'stock' },
        count: (c % 12) + 1,
        reason,
      }),
  ],
  [1, (f, a) => f.tell('kit.spoil', { kit: pick(f.kits, a), reason })],
  [1, (f, a) => f.tell('label.void', { number: pick(f.bagLabels, a), reason: 'torn', words: '' })],
  [
    1,
    (f, a) =>
      f.tell('label.reprint', {
        number: pick(f.bagLabels, a),
        reason: 'torn',
        words: '',
        stock: 'roll-51x25',
        destroyed: true,
      }),
  ],
  [2, handOff],
  [4, closeDay],
  [3, (f) => f.tell('day.reopen', { reason })],
  [
    3,
    (f, a) =>
      f.tell('day.open', {
        date: `2026-11-${15 + (a % 5)}` as never,
        kits: a % 20,
        blankLabels: 100,
      }),
  ],
  [2, async (f, a) => f.pass(a % 90)],
  [2, async (f, a) => f.turnTo(f.people[a % 3] ?? f.crew.lead)],
  [6, async (f) => f.turnTo(f.crew.lead)],
]

export const day = fc.array(
  fc.record({
    deed: fc.oneof(...deeds.map(([weight, deed]) => ({ weight, arbitrary: fc.constant(deed) }))),
    a: fc.nat(500),
    b: fc.nat(500),
    c: fc.nat(500),
  }),
  { minLength: 120, maxLength: 180, size: 'max' },
)
