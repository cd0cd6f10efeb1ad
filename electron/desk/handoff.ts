/** The handoff: coolers out, the manifest, and who signed for it. */
import type { ReadableLog } from '../../db/connection.ts'
import { pinRecordOf } from '../../db/kept-apart.ts'
import { bagsInCooler } from '../../db/read/bags.ts'
import { bagTally, coolerOf } from '../../db/read/coolers.ts'
import { handoffs as everyHandoff } from '../../db/read/handoffs.ts'
import { wasKitSent } from '../../db/read/kits.ts'
import { nextSerial } from '../../db/read/serials.ts'
import type { CoolerRecord } from '../../shared-types/cooler.ts'
import { draft } from '../../shared-types/entry.ts'
import type { Courier } from '../../shared-types/courier.ts'
import type { HandoffRecord } from '../../shared-types/handoff.ts'
import type { Manifest } from '../../shared-types/manifest.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { granted, type Result } from '../../shared-types/result.ts'
import {
  type CoolerNumber,
  handoffNumber,
  type KitNumber,
  lastSerial,
} from '../../shared-types/sample-number.ts'
import type { StationRecord } from '../../shared-types/station.ts'
import type { BagRecord } from '../../shared-types/tissue.ts'
import type { HandoffView } from '../../shared-types/views/handoff.ts'
import {
  checkReadyToSign,
  decideBeginHandoff,
  decideCallOff,
  decideClass,
  decidePack,
  decideScanOut,
} from '../station/handoff.ts'
import { manifestOf } from '../station/manifest.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { bagsInExcursions } from './cold.ts'
import { readSeal } from './coolers.ts'
import { decided, done } from './decided.ts'
import { correct } from './handoff-correct.ts'
import { findCooler, findHandoff } from './find.ts'
import { digestOf } from './manifest-check.ts'
import { manifestFiles } from './manifest-files.ts'
import { namesOf } from './names.ts'
import { handoffNotSigned, serialsExhausted } from './refusals.ts'

function coolerKnown(log: ReadableLog, cooler: CoolerNumber): CoolerRecord {
  const record = coolerOf(log, cooler)
  if (!record) throw new Error(`a handoff holds cooler ${cooler}, which was never opened`)
  return record
}

/** What was chosen the last time for the same destination: offered, never taken by itself. */
function classedBefore(log: ReadableLog, { handoff, destination }: HandoffRecord) {
  const before = everyHandoff(log).find(
    (each) => each.handoff !== handoff && each.destination === destination && each.classed,
  )
  return before?.classed ?? null
}

function handoffView(log: ReadableLog, handoff: HandoffRecord): HandoffView {
  return {
    handoff: handoff.handoff,
    state: handoff.state,
    destination: handoff.destination,
    begunMs: handoff.begunMs,
    signedMs: handoff.signed?.ms ?? null,
    courier: handoff.signed?.manifest.courier ?? null,
    digest: handoff.signed?.digest ?? null,
    supplements: handoff.supplements,
    classed: handoff.classed,
    classedBefore: classedBefore(log, handoff),
    packed: handoff.packed,
    edition: (handoff.signed?.manifest.corrections.length ?? 0) + 1,
    coolers: handoff.coolers.map(({ cooler, scanned }) => {
      const { name, seal } = coolerKnown(log, cooler)
      const seen = scanned && {
        seal: scanned.seal,
        celsius: scanned.celsius,
        counted: scanned.counted,
        words: scanned.words,
        ms: scanned.ms,
      }
      return { cooler, name, seal, bags: bagTally(log, cooler), scanned: seen }
    }),
  }
}

/** The manifest of a handoff that is about to be signed, and the digest that proves it. */
function manifestNow(
  log: ReadableLog,
  station: StationRecord,
  handoff: HandoffRecord,
  signing: { lead: PersonRecord; courier: Courier; ms: number },
): { manifest: Manifest; digest: string } {
  const marked = bagsInExcursions(log)
  const manifest = manifestOf({
    station,
    handoff,
    lead: signing.lead,
    courier: signing.courier,
    handedOverMs: signing.ms,
    coolers: handoff.coolers.map(({ cooler }) => ({
      ...coolerKnown(log, cooler),
      inside: bagsInCooler(log, cooler).map((bag) => ({
        ...bag,
        excursion: marked.has(bag.bag),
      })),
    })),
  })
  return { manifest, digest: digestOf(manifest) }
}

/** Kits whose bags leave for the first time. */
function kitsSentFirst(log: ReadableLog, bags: readonly BagRecord[]): KitNumber[] {
  const kits = new Set(bags.map(({ kit }) => kit))
  return [...kits].filter((kit) => !wasKitSent(log, kit))
}

export const handoffQueries = {
  handoffs: ({ log }) =>
    granted({ handoffs: everyHandoff(log).map((handoff) => handoffView(log, handoff)) }),
  handoff: ({ log }, { handoff: text }) => {
    const handoff = findHandoff(log, text)
    return handoff.ok ? granted(handoffView(log, handoff.value)) : handoff
  },
  manifest: async ({ log, station, now }, { handoff: text }) => {
    const handoff = findHandoff(log, text)
    if (!handoff.ok) return handoff
    const { signed } = handoff.value
    if (!signed) return handoffNotSigned()
    return granted(await manifestFiles(signed, station, now))
  },
} satisfies Partial<QueryHandlers>

/** Every cooler named, each found. */
function findCoolers(log: ReadableLog, texts: readonly string[]): Result<CoolerRecord[]> {
  const found: CoolerRecord[] = []
  for (const text of texts) {
    const cooler = findCooler(log, text)
    if (!cooler.ok) return cooler
    found.push(cooler.value)
  }
  return granted(found)
}

export const handoffCommands = {
  'handoff.begin': ({ act }, { destination, coolers: texts, supplements }) =>
    act((tx) => {
      const adds = supplements === null ? granted(null) : findHandoff(tx, supplements)
      if (!adds.ok) return adds
      const found = findCoolers(tx, texts)
      if (!found.ok) return found
      const serial = nextSerial(tx, 'handoff')
      if (serial > lastSerial) return serialsExhausted('handoffs')
      const handoff = handoffNumber(tx.desk, serial)
      return decided(decideBeginHandoff(handoff, destination, found.value, adds.value), { handoff })
    }),
  'cooler.scanOut': ({ act, station: { settings } }, input) =>
    act((tx) => {
      const handoff = findHandoff(tx, input.handoff)
      if (!handoff.ok) return handoff
      const cooler = findCooler(tx, input.cooler)
      if (!cooler.ok) return cooler
      const seal = readSeal(input.seal)
      if (!seal.ok) return seal
      const { celsius, sure, counted, words } = input
      const seen = { seal: seal.value, celsius, sure, counted, words }
      const inside = bagTally(tx, cooler.value.cooler)
      return done(decideScanOut(handoff.value, cooler.value, inside, seen, settings))
    }),
  'handoff.class': ({ act }, { handoff: text, ...classed }) =>
    act((tx) => {
      const handoff = findHandoff(tx, text)
      return handoff.ok ? done(decideClass(handoff.value, classed)) : handoff
    }),
  'handoff.pack': ({ act }, { handoff: text, ...packed }) =>
    act((tx) => {
      const handoff = findHandoff(tx, text)
      return handoff.ok ? done(decidePack(handoff.value, packed)) : handoff
    }),
  'handoff.correct': correct,
  'handoff.callOff': ({ act }, { handoff: text, reason }) =>
    act((tx) => {
      const handoff = findHandoff(tx, text)
      return handoff.ok ? done(decideCallOff(handoff.value, reason)) : handoff
    }),
  'handoff.sign': async ({ act, log, by, pins, now, station }, input) => {
    const right = await pins.check(by.person, input.pin, pinRecordOf(log, by.person), now)
    if (!right.ok) return right
    return act((tx) => {
      const handoff = findHandoff(tx, input.handoff)
      if (!handoff.ok) return handoff
      const ready = checkReadyToSign(handoff.value, namesOf(tx), input.asItIs)
      if (!ready.ok) return ready
      const signing = { lead: by, courier: input.courier, ms: now }
      const { manifest, digest } = manifestNow(tx, station, handoff.value, signing)
      const inside = manifest.coolers.flatMap(({ cooler }) => bagsInCooler(tx, cooler))
      const signed = draft('handoff.signed', {
        handoff: handoff.value.handoff,
        lead: by.person,
        leadSignature: input.leadSignature,
        courierSignature: input.courierSignature,
        digest,
        manifest,
        kits: kitsSentFirst(tx, inside),
      })
      return granted({ drafts: [signed], value: { digest } })
    })
  },
} satisfies Partial<CommandHandlers>
