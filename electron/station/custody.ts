/**
 * The chain of custody of one bag: who held it from when to when. After EPA Region V manual 905R78115
 * (1978) a sample is in custody while it is in possession, in view, locked up after possession, in a
 * secure area, or under a seal that breaks on opening.
 */
import { keptByWords } from '../../shared-types/cooler.ts'
import type { KnownEntry } from '../../shared-types/entry.ts'
import type { BagNumber, CoolerNumber } from '../../shared-types/sample-number.ts'
import type { CustodyBy } from '../../shared-types/views/custody.ts'
import { animalChanges } from './corrections.ts'

export interface Step {
  readonly fromMs: number
  readonly toMs: number | null
  readonly holder: string
  readonly by: CustodyBy
  readonly seal: string | null
  readonly words: string
  readonly struck: {
    readonly initials: string
    readonly ms: number
    readonly reason: string
  } | null
}

export interface Chain {
  readonly steps: readonly Step[]
  readonly holes: readonly string[]
  readonly corrections: readonly {
    readonly ms: number
    readonly what: string
    readonly was: string
    readonly is: string
    readonly initials: string
    readonly reason: string
  }[]
}

interface Building {
  steps: Step[]
  holes: string[]
  cooler: CoolerNumber | null
  seal: string | null
  /** When the day was closed over an open cooler that nobody had locked up; null where it was not. */
  leftMs: number | null
}

/** After the close somebody is still there for so long. */
const watchedMs = 3_600_000

type NameOf = (number: string) => string

function take(
  chain: Building,
  fromMs: number,
  step: Omit<Step, 'fromMs' | 'toMs' | 'struck'>,
): void {
  const last = chain.steps.at(-1)
  if (last && last.toMs === null) {
    if (fromMs < last.fromMs)
      chain.holes.push('A clock went back between two steps: their times do not prove the order.')
    chain.steps[chain.steps.length - 1] = { ...last, toMs: Math.max(fromMs, last.fromMs) }
  }
  if (chain.leftMs !== null && fromMs - chain.leftMs > watchedMs) chain.holes.push(unwatched)
  chain.leftMs = null
  chain.steps.push({ ...step, fromMs, toMs: null, struck: null })
}

const unwatched =
  'The day was closed while its cooler was neither sealed nor locked up: nobody says how it was kept.'

/**
 * The chain from the entries about the bag, its animal, its coolers and its handoffs, in the order of the
 * log. Each step ends when the next begins; what breaks it is told as a hole.
 */
export function custodyOf(bag: BagNumber, entries: readonly KnownEntry[], nameOf: NameOf): Chain {
  const chain: Building = { steps: [], holes: [], cooler: null, seal: null, leftMs: null }
  for (const entry of entries) step(chain, bag, entry, nameOf)
  if (chain.leftMs !== null) chain.holes.push(unwatched)
  return {
    steps: chain.steps,
    holes: [...new Set(chain.holes)],
    corrections: animalChanges(entries, nameOf),
  }
}

function step(chain: Building, bag: BagNumber, entry: KnownEntry, nameOf: NameOf): void {
  const ms = entry.at.wall
  const who = entry.by ? nameOf(entry.by) : 'somebody'
  switch (entry.kind) {
    case 'bag.sealed':
      if (entry.body.bag !== bag) return
      return take(chain, ms, {
        holder: who,
        by: 'possession',
        seal: null,
        words: 'took the tissue and sealed it in its bag, at the bench',
      })
    case 'bag.placed':
      if (entry.body.bag !== bag) return
      if (chain.cooler && chain.cooler !== entry.body.cooler)
        chain.holes.push('It was put into a cooler without being taken out of another.')
      chain.cooler = entry.body.cooler
      return take(chain, ms, {
        holder: `Cooler ${nameOf(entry.body.cooler)}`,
        by: 'view',
        seal: null,
        words: `put in by ${who}, in view of the station`,
      })
    case 'bag.taken-out':
      if (entry.body.bag !== bag) return
      chain.cooler = null
      return take(chain, ms, {
        holder: who,
        by: 'possession',
        seal: null,
        words: `taken out of ${nameOf(entry.body.cooler)}: ${entry.body.reason}`,
      })
    case 'bag.discarded':
      if (entry.body.bag !== bag) return
      chain.cooler = null
      return take(chain, ms, {
        holder: who,
        by: 'ended',
        seal: null,
        words: `discarded: ${entry.body.reason}`,
      })
    case 'cooler.kept':
      if (chain.cooler !== entry.body.cooler) return
      return kept(chain, entry, who, nameOf)
    case 'cooler.sealed':
      if (chain.cooler !== entry.body.cooler) return
      chain.seal = entry.body.seal
      return take(chain, ms, {
        holder: `Cooler ${nameOf(entry.body.cooler)}`,
        by: 'sealed',
        seal: entry.body.seal,
        words: `sealed by ${who}`,
      })
    case 'seal.broken':
      if (chain.cooler !== entry.body.cooler) return
      chain.seal = null
      return take(chain, ms, {
        holder: `Cooler ${nameOf(entry.body.cooler)}`,
        by: 'view',
        seal: null,
        words: `seal ${entry.body.seal} broken by ${who}: ${entry.body.reason}`,
      })
    case 'day.closed':
      if (chain.steps.at(-1)?.by === 'view' && chain.cooler?.startsWith(entry.desk))
        chain.leftMs = ms
      return
    case 'handoff.signed':
      return handedOver(chain, bag, entry, who)
    case 'handoff.corrected':
      return corrected(chain, bag, entry, who)
    case 'receipt.counted':
      return received(chain, bag, entry)
    default:
      return undefined
  }
}

type Of<K extends KnownEntry['kind']> = Extract<KnownEntry, { kind: K }>

/** Under lock, in a secure area or in view again; a seal on it goes on proving the more. */
function kept(chain: Building, entry: Of<'cooler.kept'>, who: string, nameOf: NameOf): void {
  const { cooler, kept: how, where } = entry.body
  take(chain, entry.at.wall, {
    holder: `Cooler ${nameOf(cooler)}`,
    by: chain.seal === null ? how : 'sealed',
    seal: chain.seal,
    words: `${keptByWords[how]}: ${where}, by ${who}`,
  })
}

function handedOver(
  chain: Building,
  bag: BagNumber,
  entry: Of<'handoff.signed'>,
  who: string,
): void {
  const { manifest } = entry.body
  const cooler = manifest.coolers.find(({ bags }) => bags.some((each) => each.bag === bag))
  if (!cooler) return
  if (chain.seal !== cooler.seal)
    chain.holes.push(
      `The seal at the handoff was ${cooler.seal}, and the log had ${chain.seal ?? 'none'} on the cooler.`,
    )
  chain.seal = cooler.seal
  take(chain, entry.at.wall, {
    holder: [manifest.courier.name, manifest.courier.organisation].filter(Boolean).join(', '),
    by: 'handed-over',
    seal: cooler.seal,
    words: `handed over by ${who} in cooler ${cooler.name}, under seal, for ${manifest.destination}`,
  })
}

function corrected(
  chain: Building,
  bag: BagNumber,
  entry: Of<'handoff.corrected'>,
  who: string,
): void {
  const correction = entry.body.manifest.corrections.at(-1)
  const stroke = correction?.strokes.find((each) => each.bag === bag)
  if (!correction || !stroke) return
  const { initials } = correction.by
  if (stroke.what === 'taken-off') {
    strike(chain, { initials, ms: entry.at.wall, reason: correction.reason })
    chain.cooler = null
    chain.seal = null
    return take(chain, entry.at.wall, {
      holder: who,
      by: 'possession',
      seal: null,
      words: `had not left: taken off the manifest (${correction.reason})`,
    })
  }
  const { courier, coolers, destination } = entry.body.manifest
  const cooler = coolers.find((each) => each.cooler === stroke.cooler)
  chain.seal = cooler?.seal ?? null
  take(chain, entry.at.wall, {
    holder: [courier.name, courier.organisation].filter(Boolean).join(', '),
    by: 'handed-over',
    seal: chain.seal,
    words: `added to the manifest for ${destination} (${correction.reason})`,
  })
}

/** The handing over is struck through: it stays readable, with whose hand struck it and when. */
function strike(chain: Building, struck: NonNullable<Step['struck']>): void {
  const place = chain.steps.findLastIndex(({ by }) => by === 'handed-over')
  const step = chain.steps[place]
  if (step) chain.steps[place] = { ...step, struck }
}

function received(chain: Building, bag: BagNumber, entry: Of<'receipt.counted'>): void {
  const last = chain.steps.at(-1)
  if (last?.by !== 'handed-over') return
  const { receivedBy, bags, coolers } = entry.body
  const found = bags.find((each) => each.bag === bag)
  if (!found) {
    chain.holes.push(`${receivedBy} did not find it in the delivery.`)
    return
  }
  const other = coolers.length > 0 && !coolers.some(({ seal }) => seal === last.seal)
  if (other) chain.holes.push(`${receivedBy} did not find seal ${last.seal ?? ''} on any cooler.`)
  take(chain, entry.at.wall, {
    holder: receivedBy,
    by: 'possession',
    seal: null,
    words: found.state === 'damaged' ? `received damaged: ${found.words}` : 'received whole',
  })
}
