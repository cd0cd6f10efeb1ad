/**
 * The handoff manifest: which sealed coolers, with which bags, were given to which courier. The
 * first page is what a driver and the laboratory's door need; the bags follow in consecutive order,
 * because the laboratory ticks them off against this list.
 */
import {
  type BagNumber,
  type CoolerNumber,
  type HandoffNumber,
  grouped,
} from '../../shared-types/sample-number.ts'
import { type Kept, type TissueSite, keptWords } from '../../shared-types/tissue.ts'
import type { Block, FilledPage, Section } from './flow.ts'
import { custodyBlocks, frontBlocks, proofBlock } from './manifest-front.ts'
import { type PaperName, innerWidth, paperPages } from './paper.ts'
import { writePdf } from './pdf-writer.ts'
import type { SignedBy } from './signature.ts'
import { ruleMark } from './mark.ts'
import { lineHeight, textWidth } from './ruler.ts'
import { type Column, type TableStyle, rowBlocks, tableHead } from './table.ts'

export interface ManifestedBag {
  readonly bag: BagNumber
  readonly site: TissueSite
  readonly species: string
  readonly kept: Kept
  /** Local date and time with its zone. */
  readonly sealedAt: string
  /** What the sampler saw on the cut face. */
  readonly check: string
  /** Where the animal was taken; empty where nobody knows. */
  readonly harvest: string
  /** It lay in a cooler while that was outside its limits. */
  readonly excursion: boolean
}

/** A correction since the handoff: what it strikes through or adds, by whom and why. */
export interface PrintedCorrection {
  readonly edition: number
  /** Digest of the edition before. */
  readonly replaces: string
  readonly reason: string
  readonly at: string
  readonly initials: string
  readonly strokes: readonly {
    readonly bag: BagNumber
    readonly cooler: string
    readonly what: 'taken-off' | 'added'
  }[]
}

export interface ManifestedCooler {
  readonly cooler: CoolerNumber
  readonly name: string
  /** How it is kept, such as `on ice`. */
  readonly kept: string
  readonly seal: string
  /** Read when it was handed over; null when nobody could. */
  readonly celsius: number | null
  /** Bags as counted when it was handed over. */
  readonly counted: number
  /** Why counted and listed bags differ; empty when they agree. */
  readonly difference: string
  readonly bags: readonly ManifestedBag[]
}

/** Holds nothing of the hunter. Times are local, with their zone, as words ready to print. */
export interface ManifestSheet {
  readonly handoff: HandoffNumber
  readonly station: string
  readonly desk: string
  readonly date: string
  readonly practice: boolean
  readonly courier: {
    readonly name: string
    readonly organisation: string
    readonly vehicle: string
  }
  /** The laboratory the coolers go to. */
  readonly destination: string
  readonly coolers: readonly ManifestedCooler[]
  /** As both saw it at the handoff: seals, leaks, labels. Empty to write it by hand. */
  readonly condition: string
  /** The manifest that this one adds to. */
  readonly supplements: HandoffNumber | null
  /** How it is classed for transport, in words; empty where nobody chose. */
  readonly transport: string
  readonly dryIceKg: number | null
  readonly corrections: readonly PrintedCorrection[]
  readonly relinquished: SignedBy
  readonly received: SignedBy
  /** SHA-256 of the manifest's canonical JSON (RFC 8785), 64 hexadecimal digits. */
  readonly digest: string
  /** The data file, carried inside the PDF too. */
  readonly data: { readonly name: string; readonly text: string }
  /** When the document is made, UTC milliseconds. */
  readonly madeAtMs: number
}

/** Ten points: read in a truck cab. */
const type = 10

interface TalliedBlock extends Block {
  /** Bags that this block lists. */
  readonly bags: number
}

const coolerColumns: readonly Column[] = [
  { title: 'Cooler', share: 0.24 },
  { title: 'Name', share: 0.2 },
  { title: 'Kept', share: 0.18 },
  { title: 'Seal', share: 0.18 },
  { title: '°C', share: 0.1, align: 'right' },
  { title: 'Bags', share: 0.1, align: 'right' },
]

function celsiusWords(celsius: number | null): string {
  return celsius === null ? 'not read' : celsius.toFixed(1).replace('-', '−')
}

/** The cooler, and across the whole width what is wrong with its count. */
function coolerRows(each: ManifestedCooler, style: TableStyle): Block[] {
  const { cooler, name, kept, seal, celsius, counted, bags, difference } = each
  const cells = [grouped(cooler), name, kept, seal, celsiusWords(celsius), String(counted)]
  const row = rowBlocks({ cells }, coolerColumns, style)
  if (counted === bags.length) return row
  const note = `▲ ${bags.length} bags listed, ${counted} counted: ${difference || 'NO REASON GIVEN'}`
  return [...row, ...rowBlocks({ cells: [note], bold: true }, [{ title: '', share: 1 }], style)]
}

function coolerSection({ coolers }: ManifestSheet, style: TableStyle): Section {
  const counted = coolers.reduce((sum, each) => sum + each.counted, 0)
  const cells = [`${coolers.length} in all`, '', '', '', '', String(counted)]
  return {
    head: tableHead('Coolers', coolerColumns, style),
    rows: [
      ...coolers.flatMap((cooler) => coolerRows(cooler, style)),
      ...rowBlocks({ cells, bold: true }, coolerColumns, style),
    ],
  }
}

const bagColumns: readonly Column[] = [
  { title: '#', share: 0.05, align: 'right' },
  { title: 'Bag', share: 0.21 },
  { title: 'Side', share: 0.07 },
  { title: 'Species', share: 0.12 },
  { title: 'Kept', share: 0.08 },
  { title: 'Sealed', share: 0.16 },
  { title: 'Tissue check', share: 0.12 },
  { title: 'Animal taken in', share: 0.19 },
]

/** By number, so that the bags of one kit stand together: left, right, obex. */
function inOrder(bags: readonly ManifestedBag[]): ManifestedBag[] {
  return bags.toSorted((a, b) => (a.bag < b.bag ? -1 : a.bag > b.bag ? 1 : 0))
}

function bagSection(
  { cooler, name, seal, bags }: ManifestedCooler,
  before: number,
  style: TableStyle,
): Section<TalliedBlock> {
  const title = `Bags in cooler ${grouped(cooler)} · ${name} · seal ${seal}`
  const rows = inOrder(bags).flatMap((each, place) => {
    const { bag, site, species, kept, sealedAt, check, harvest, excursion } = each
    const seen = excursion ? `${check} ▲ temperature` : check
    const where = harvest === '' ? '▲ NOT KNOWN' : harvest
    const cells = [grouped(bag), site, species, keptWords[kept], sealedAt, seen, where]
    const blocks = rowBlocks({ cells: [String(before + place + 1), ...cells] }, bagColumns, style)
    return blocks.map((block, part) => ({ ...block, bags: part === 0 ? 1 : 0 }))
  })
  return { head: tableHead(title, bagColumns, style), rows }
}

function bagSections({ coolers }: ManifestSheet, style: TableStyle): Section<TalliedBlock>[] {
  let before = 0
  return coolers.map((cooler) => {
    const section = bagSection(cooler, before, style)
    before += cooler.bags.length
    return section
  })
}

const correctionColumns: readonly Column[] = [
  { title: 'Edition', share: 0.1 },
  { title: 'Struck or added', share: 0.34 },
  { title: 'Why', share: 0.3 },
  { title: 'Initials and date', share: 0.26 },
]

/** A line through the middle of a row's second cell: what was wrong stays readable. */
function struckThrough(block: Block, text: string, style: TableStyle): Block {
  const x = 0.1 * style.width
  const width = textWidth(text, 'regular', style.size)
  return { ...block, marks: [...block.marks, ruleMark(x, lineHeight(style.size) / 2, width, 0.8)] }
}

/** Every correction since the handoff. Bags stand here ungrouped: the list below is the list. */
function correctionSections(
  { corrections }: ManifestSheet,
  style: TableStyle,
): Section<TalliedBlock>[] {
  if (corrections.length === 0) return []
  const rows = corrections.flatMap(({ edition, reason, at, initials, strokes }) =>
    strokes.flatMap(({ bag, cooler, what }) => {
      const text = what === 'added' ? `+ ${bag}, ${cooler}` : `${bag}, ${cooler}`
      const cells = [String(edition), text, reason, `${initials} ${at}`]
      const [first, ...rest] = rowBlocks({ cells }, correctionColumns, style)
      if (!first) return []
      return [what === 'added' ? first : struckThrough(first, text, style), ...rest]
    }),
  )
  const replaces = corrections.at(-1)?.replaces ?? ''
  const title = `Corrected manifest, edition ${corrections.length + 1}: replaces the one with digest ${replaces.slice(0, 16)}…`
  return [untallied({ head: tableHead(title, correctionColumns, style), rows })]
}

function untallied(section: Section): Section<TalliedBlock> {
  return { ...section, rows: section.rows.map((row) => ({ ...row, bags: 0 })) }
}

/** Says at the foot of each page how many bags it lists, and how many were listed so far. */
function runningTotal(name: string, all: number): (page: FilledPage<TalliedBlock>) => string {
  let soFar = 0
  return ({ rows }) => {
    const here = rows.reduce((sum, { bags }) => sum + bags, 0)
    soFar += here
    return `${name} · bags on this page ${here}, so far ${soFar} of ${all}`
  }
}

/** The manifest as a PDF. */
export function printManifest(sheet: ManifestSheet, paper: PaperName): Promise<Uint8Array> {
  const width = innerWidth(paper)
  const style = { width, size: type }
  const sections = [
    untallied({ rows: frontBlocks(sheet, width) }),
    untallied(coolerSection(sheet, style)),
    untallied({ rows: custodyBlocks(sheet, width) }),
    untallied({ rows: [proofBlock(sheet, width)] }),
    ...correctionSections(sheet, style),
    ...bagSections(sheet, style),
  ]
  const all = sheet.coolers.reduce((sum, { bags }) => sum + bags.length, 0)
  const number = grouped(sheet.handoff)
  const name = sheet.practice ? `PRACTICE · manifest ${number}` : `Manifest ${number}`
  const pages = paperPages(paper, sections, runningTotal(name, all))
  const { madeAtMs, data } = sheet
  return writePdf(pages, { title: `Handoff manifest ${number}`, madeAtMs, inside: data })
}
