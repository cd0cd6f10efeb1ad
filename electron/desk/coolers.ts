/** Coolers: bags in and out, temperatures, seals. */
import type { ReadableLog } from '../../db/connection.ts'
import { bagsInCooler, bagsOnBench, type ListedBag } from '../../db/read/bags.ts'
import {
  bagTally,
  coolerOf,
  coolers as allCoolers,
  lastReadingOf,
  oldestFreshMs,
  readingsOf,
  sealUse,
} from '../../db/read/coolers.ts'
import { nextSerial } from '../../db/read/serials.ts'
import { type CoolerRecord, SealNumber } from '../../shared-types/cooler.ts'
import { draft } from '../../shared-types/entry.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { coolerNumber, lastSerial } from '../../shared-types/sample-number.ts'
import type { Keeping, StationSettings } from '../../shared-types/station.ts'
import type { BagView, CoolerView } from '../../shared-types/views/coolers.ts'
import {
  decideBreakSeal,
  decidePlaceBag,
  decideReading,
  decideSeal,
  decideTakeOut,
  decideKeep,
  isExcursion,
  type PastSeal,
  readingAdvice,
} from '../station/cooler.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { bagsInExcursions, holdOf } from './cold.ts'
import { decided, done } from './decided.ts'
import { findBag, findCooler } from './find.ts'
import { serialsExhausted } from './refusals.ts'

type BagTold = (bag: ListedBag, keeping: Keeping | null) => BagView

/** How a bag is told: its hold clock by the clock as it was put right, and whether it was in an excursion. */
function bagViews(log: ReadableLog, settings: StationSettings): BagTold {
  const until = holdOf(log, settings)
  const marked = bagsInExcursions(log)
  return (bag, keeping) => ({
    bag: bag.bag,
    animal: bag.animal,
    species: bag.species,
    site: bag.site,
    kept: bag.kept,
    check: bag.check ?? 'unsure',
    sealedMs: bag.sealedMs,
    holdUntilMs: until(bag, keeping),
    excursion: marked.has(bag.bag),
  })
}

function coolerView(log: ReadableLog, settings: StationSettings, cooler: CoolerRecord): CoolerView {
  const oldest = oldestFreshMs(log, cooler.cooler)
  const { keeping } = cooler
  return {
    cooler: cooler.cooler,
    name: cooler.name,
    keeping,
    capacity: cooler.capacity,
    state: cooler.state,
    seal: cooler.seal,
    bags: bagTally(log, cooler.cooler),
    lastReading: lastReadingOf(log, cooler.cooler),
    holdUntilMs:
      oldest === null ? null : holdOf(log, settings)({ kept: 'fresh', sealedMs: oldest }, keeping),
    limits: settings.limits[keeping],
  }
}

export const coolerQueries = {
  coolers: ({ log, station: { settings }, now }) => {
    const told = bagViews(log, settings)
    return granted({
      nowMs: now,
      coolers: allCoolers(log).map((cooler) => coolerView(log, settings, cooler)),
      bench: bagsOnBench(log).map((bag) => told(bag, null)),
    })
  },
  cooler: ({ log, station: { settings } }, { cooler: text }) => {
    const cooler = findCooler(log, text)
    if (!cooler.ok) return cooler
    const { cooler: number, keeping } = cooler.value
    const told = bagViews(log, settings)
    return granted({
      cooler: coolerView(log, settings, cooler.value),
      bags: bagsInCooler(log, number).map((bag) => told(bag, keeping)),
      readings: readingsOf(log, number).filter(({ source }) => source === ''),
    })
  },
} satisfies Partial<QueryHandlers>

/** The number of a seal as printed on it, or what is wrong with it. */
export function readSeal(text: string): Result<string> {
  const seal = SealNumber.safeParse(text)
  if (seal.success) return granted(seal.data)
  return refused(
    'seal-not-readable',
    'A seal number has 3 to 20 letters, digits and hyphens.',
    'Type the number printed on the seal.',
    'seal',
  )
}

/** The cooler that a seal was ever put on. */
function pastSeal(log: ReadableLog, seal: string): PastSeal | null {
  const before = sealUse(log, seal)
  return before && { cooler: before.name, broken: before.brokenMs !== null }
}

export const coolerCommands = {
  'cooler.open': ({ act }, opened) =>
    act((tx) => {
      const serial = nextSerial(tx, 'cooler')
      if (serial > lastSerial) return serialsExhausted('coolers')
      if (allCoolers(tx).some(({ name, state }) => name === opened.name && state !== 'handed-off'))
        return refused(
          'cooler-name-taken',
          `A cooler named ${opened.name} is already here.`,
          'Give this one another name.',
          'name',
        )
      const cooler = coolerNumber(tx.desk, serial)
      return granted({ drafts: [draft('cooler.opened', { cooler, ...opened })], value: { cooler } })
    }),
  'bag.place': ({ act }, { bag: bagText, cooler: coolerText }) =>
    act((tx) => {
      const cooler = findCooler(tx, coolerText)
      if (!cooler.ok) return cooler
      const bag = findBag(tx, bagText)
      if (!bag.ok) return bag
      return done(decidePlaceBag(bag.value, cooler.value, bagTally(tx, cooler.value.cooler)))
    }),
  'bag.takeOut': ({ act }, { bag: text, reason }) =>
    act((tx) => {
      const bag = findBag(tx, text)
      if (!bag.ok) return bag
      const cooler = bag.value.cooler && coolerOf(tx, bag.value.cooler)
      return done(decideTakeOut(bag.value, cooler, reason))
    }),
  'cooler.read': ({ act, station: { settings } }, { cooler: text, celsius, sure }) =>
    act((tx) => {
      const cooler = findCooler(tx, text)
      if (!cooler.ok) return cooler
      const { keeping } = cooler.value
      return decided(decideReading(cooler.value, settings, celsius, sure), {
        excursion: isExcursion(settings, keeping, celsius),
        advice: readingAdvice(settings, keeping, celsius),
      })
    }),
  'cooler.seal': ({ act }, { cooler: text, seal: sealText }) =>
    act((tx) => {
      const cooler = findCooler(tx, text)
      if (!cooler.ok) return cooler
      const seal = readSeal(sealText)
      if (!seal.ok) return seal
      const inside = bagTally(tx, cooler.value.cooler)
      return done(decideSeal(cooler.value, seal.value, inside, pastSeal(tx, seal.value)))
    }),
  'cooler.keep': ({ act }, { cooler: text, kept, where }) =>
    act((tx) => {
      const cooler = findCooler(tx, text)
      return cooler.ok ? done(decideKeep(cooler.value, kept, where)) : cooler
    }),
  'seal.break': ({ act }, { cooler: text, reason }) =>
    act((tx) => {
      const cooler = findCooler(tx, text)
      return cooler.ok ? done(decideBreakSeal(cooler.value, reason)) : cooler
    }),
} satisfies Partial<CommandHandlers>
