/** Puts a signed manifest right: the corrected one names the one that it replaces. */
import { pinRecordOf } from '../../db/kept-apart.ts'
import type { LogTransaction } from '../../db/log/append.ts'
import { allBags } from '../../db/read/bags.ts'
import { wasKitSent } from '../../db/read/kits.ts'
import { draft } from '../../shared-types/entry.ts'
import type { ParsedInput } from '../../shared-types/desk-api.ts'
import type { Manifest, ManifestStroke } from '../../shared-types/manifest.ts'
import { granted, type Result } from '../../shared-types/result.ts'
import { type BagNumber, type KitNumber, kitOf } from '../../shared-types/sample-number.ts'
import { correctedManifest, strokesOf, type WishedStrokes } from '../station/corrections.ts'
import { localIso } from '../station/local-time.ts'
import { manifestBag } from '../station/manifest.ts'
import type { CommandHandlers } from './call.ts'
import { bagsInExcursions } from './cold.ts'
import { findBag, findCooler, findHandoff } from './find.ts'
import { digestOf } from './manifest-check.ts'
import { handoffNotSigned } from './refusals.ts'

type Input = ParsedInput<'handoff.correct'>

/** The bags named, each found, those to add with the line the manifest gets. */
function wished(tx: LogTransaction, input: Input, zone: string): Result<WishedStrokes> {
  const takeOff: BagNumber[] = []
  for (const text of input.takeOff) {
    const bag = findBag(tx, text)
    if (!bag.ok) return bag
    takeOff.push(bag.value.bag)
  }
  const listed = input.add.length > 0 ? allBags(tx) : []
  const marked = bagsInExcursions(tx)
  const add: WishedStrokes['add'][number][] = []
  for (const each of input.add) {
    const bag = findBag(tx, each.bag)
    if (!bag.ok) return bag
    const cooler = findCooler(tx, each.cooler)
    if (!cooler.ok) return cooler
    const full = listed.find((one) => one.bag === bag.value.bag)
    if (!full) throw new Error(`bag ${bag.value.bag} is known, yet in no list`)
    const row = manifestBag({ ...full, excursion: marked.has(full.bag) }, zone)
    add.push({ bag: bag.value, cooler: cooler.value, row })
  }
  return granted({ takeOff, add })
}

/** Kits that leave or come back whole with the strokes: the ledger follows them. */
function kitMoves(tx: LogTransaction, after: Manifest, strokes: readonly ManifestStroke[]) {
  const left = new Set(after.coolers.flatMap(({ bags }) => bags.map(({ bag }) => kitOf(bag))))
  const of = (what: ManifestStroke['what']) =>
    new Set(strokes.flatMap((each) => (each.what === what ? [kitOf(each.bag)] : [])))
  const kits: KitNumber[] = [...of('added')].filter((kit) => !wasKitSent(tx, kit))
  const kitsBack: KitNumber[] = [...of('taken-off')].filter((kit) => !left.has(kit))
  return { kits, kitsBack }
}

export const correct: CommandHandlers['handoff.correct'] = async (call, input) => {
  const { act, log, by, pins, now, station } = call
  const right = await pins.check(by.person, input.pin, pinRecordOf(log, by.person), now)
  if (!right.ok) return right
  return act((tx) => {
    const handoff = findHandoff(tx, input.handoff)
    if (!handoff.ok) return handoff
    const { signed } = handoff.value
    if (!signed) return handoffNotSigned()
    const wish = wished(tx, input, station.zone)
    if (!wish.ok) return wish
    const strokes = strokesOf(signed.manifest, wish.value)
    if (!strokes.ok) return strokes
    const manifest = correctedManifest(signed, strokes.value, wish.value, {
      lead: by,
      reason: input.reason,
      at: localIso(now, station.zone),
    })
    const digest = digestOf(manifest)
    const entry = draft('handoff.corrected', {
      handoff: handoff.value.handoff,
      lead: by.person,
      digest,
      manifest,
      ...kitMoves(tx, manifest, strokes.value),
    })
    return granted({ drafts: [entry], value: { digest, edition: manifest.corrections.length + 1 } })
  })
}
