/**
 * The close sheet: what the lead signs at dusk and a supervisor reads in a minute. The first lines
 * say whether anything needs attention; the tables say what.
 */
import type { CoolerNumber } from '../../shared-types/sample-number.ts'
import type { LabelAccount } from '../../shared-types/views/close.ts'
import { attentionLines } from './close-attention.ts'
import {
  amendmentSection,
  coolerSection,
  countsSection,
  outcomeSection,
  readingSection,
  sampleSection,
  sideBySide,
  unfitSection,
  waitAndLabelSection,
} from './close-tables.ts'
import { type Block, type Section, beside, gap, stacked } from './flow.ts'
import { boxMark, shifted } from './mark.ts'
import { type PaperName, innerWidth, paperPages } from './paper.ts'
import type { TableStyle } from './table.ts'
import { writePdf } from './pdf-writer.ts'
import { type SignedBy, signatureField } from './signature.ts'
import { paragraph } from './text-block.ts'

export interface CountedThing {
  readonly what: string
  readonly place: string
  readonly expected: number
  readonly counted: number
  /** Why they differ; empty when they agree. */
  readonly reason: string
}

export interface SampleTally {
  readonly site: string
  readonly check: string
  readonly count: number
}

export interface ReadingOutside {
  readonly cooler: string
  readonly celsius: number
  /** The limits it should have kept, such as `0 to 6 °C`. */
  readonly limits: string
  readonly at: string
  readonly by: string
}

export interface CoolerKeptBack {
  readonly cooler: CoolerNumber
  readonly name: string
  readonly bags: number
  /** Empty when it is not sealed. */
  readonly seal: string
}

export interface Amendment {
  readonly at: string
  readonly by: string
  /** What was changed and why. */
  readonly words: string
}

/** Tissue that could not become a sample, of one sampler. */
export interface UnfitTally {
  readonly why: string
  readonly sampler: string
  readonly count: number
}

/** Times are local, with their zone, as words ready to print. */
export interface CloseSheet {
  readonly station: string
  readonly desk: string
  readonly date: string
  readonly practice: boolean
  readonly lead: SignedBy
  /** Who signed beside the lead, or why nobody did; empty where nobody need. */
  readonly second: string
  readonly counts: readonly CountedThing[]
  readonly outcomes: readonly { readonly words: string; readonly count: number }[]
  /** Minutes from check-in to the sampler; null when no animal reached one. */
  readonly waits: {
    readonly medianMinutes: number | null
    readonly ninetiethMinutes: number | null
  }
  /** Every label printed by what became of it; absent where the unused ones were never counted. */
  readonly labels?: LabelAccount
  readonly samples: readonly SampleTally[]
  /** Animals whose place of harvest the laboratory cannot use. */
  readonly placesMissing: number
  readonly readingsOutside: readonly ReadingOutside[]
  readonly coolersHere: readonly CoolerKeptBack[]
  /** Entries made after an earlier close of the same day. */
  readonly amendments: readonly Amendment[]
  readonly unfit: readonly UnfitTally[]
  /** Whether samplers are named: in the lead's own copy only. */
  readonly unfitBySampler: boolean
  /** Kits for the next day, with the forecast behind the number. */
  readonly kitsTomorrow: string
  /** What the lead leaves the next one to know; may be empty. */
  readonly handover: string
  /** Head of the log's hash chain when the sheet was made, hexadecimal, and how many entries it proves. */
  readonly chain: { readonly hash: string; readonly entries: number }
  /** When the document is made, UTC milliseconds. */
  readonly madeAtMs: number
}

/** The larger where everything then is on one page, else the smaller if that helps. */
const sizes = [9.5, 8.5] as const

const signatureWidth = 140

/** The signature stands beside the title, so that one look shows whether the day is signed. */
function titleBlock(sheet: CloseSheet, width: number): Block {
  const left = width - signatureWidth - 12
  const by = `Lead ${sheet.lead.name} · signed ${sheet.lead.at}`
  const words = stacked([
    paragraph(sheet.practice ? 'Close sheet · PRACTICE' : 'Close sheet', 'bold', 20, left),
    paragraph(`${sheet.station} · desk ${sheet.desk} · ${sheet.date}`, 'bold', 12, left),
    paragraph(by, 'regular', 11, left),
    ...(sheet.second === '' ? [] : [paragraph(sheet.second, 'regular', 11, left)]),
  ])
  const signature = signatureField(sheet.lead, signatureWidth)
  return stacked([
    beside([
      { x: 0, block: words },
      { x: width - signatureWidth, block: signature },
    ]),
    gap(6),
  ])
}

function attentionBlock(sheet: CloseSheet, width: number): Block {
  const lines = attentionLines(sheet).map((line) => paragraph(line, 'bold', 12, width - 16))
  const words = stacked(lines)
  const height = words.height + 10
  return {
    height: height + 2,
    marks: [boxMark(0.5, 0.5, width - 1, height, 1), ...shifted(words.marks, 8, 5)],
  }
}

function tomorrowBlock(
  { kitsTomorrow, handover }: CloseSheet,
  { width, size: type }: TableStyle,
): Block {
  const note =
    handover === '' ? [] : [paragraph(`To the next lead: ${handover}`, 'bold', type, width)]
  return stacked([
    gap(8),
    paragraph(`Kits for tomorrow: ${kitsTomorrow}`, 'regular', type, width),
    ...note,
  ])
}

function proofBlock({ chain }: CloseSheet, { width, size: type }: TableStyle): Block {
  const proof =
    `Proof: ${chain.entries} entries, chain head ${chain.hash.slice(0, 16)}. The log gives this head ` +
    'as long as nothing in it was taken out or altered.'
  return stacked([gap(10), paragraph(proof, 'regular', type, width)])
}

function sectionsOf(sheet: CloseSheet, style: TableStyle): Section[] {
  const { width, size } = style
  const half = { width: width / 2 - 8, size }
  return [
    { rows: [titleBlock(sheet, width), attentionBlock(sheet, width)] },
    countsSection(sheet.counts, style),
    ...sideBySide(outcomeSection(sheet, half), waitAndLabelSection(sheet, half), width),
    ...sideBySide(sampleSection(sheet, half), unfitSection(sheet, half), width),
    readingSection(sheet, style),
    coolerSection(sheet, style),
    amendmentSection(sheet, style),
    { rows: [tomorrowBlock(sheet, style)] },
    { rows: [proofBlock(sheet, style)] },
  ]
}

/** The close sheet as a PDF: one page unless the tables need more. */
export function printCloseSheet(sheet: CloseSheet, paper: PaperName): Promise<Uint8Array> {
  const width = innerWidth(paper)
  const kind = sheet.practice ? 'PRACTICE · close sheet' : 'Close sheet'
  const title = `${kind} · ${sheet.station} · desk ${sheet.desk} · ${sheet.date}`
  const [large, small] = sizes.map((size) =>
    paperPages(paper, sectionsOf(sheet, { width, size }), () => title),
  )
  const pages = (large?.length === 1 || small?.length !== 1 ? large : small) ?? []
  return writePdf(pages, { title, madeAtMs: sheet.madeAtMs })
}
