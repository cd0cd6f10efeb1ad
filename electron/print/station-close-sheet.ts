/**
 * The station close sheet: what the desks of a station signed, added up. It names each desk with who
 * closed it and what came after, and says what is left over all of them and why.
 */
import type { CoolerKeptBack } from './close-sheet.ts'
import { coolerSection, outcomeSection, signedNumber } from './close-tables.ts'
import { type Block, type Section, beside, gap, stacked } from './flow.ts'
import { boxMark, shifted } from './mark.ts'
import { type PaperName, innerWidth, paperPages } from './paper.ts'
import { writePdf } from './pdf-writer.ts'
import { type SignedBy, signatureField } from './signature.ts'
import { type Column, type TableStyle, tableSection } from './table.ts'
import { paragraph } from './text-block.ts'

export interface DeskOnSheet {
  readonly desk: string
  /** Who closed it, or that nobody has. */
  readonly closed: string
  readonly second: string
  readonly at: string
  /** What was amended after its first close; empty where nothing was. */
  readonly amended: readonly string[]
}

export interface StationCount {
  readonly what: string
  readonly expected: number
  readonly counted: number
  /** How much of what is expected went from one desk to another. */
  readonly between: number
  /** Such as `26KRVA 40 of 41 (lost)`: each desk's own count of what its log expected. */
  readonly byDesk: string
  /** Why they differ over all desks; empty when they agree. */
  readonly reason: string
}

/** Times are local, with their zone, as words ready to print. */
export interface StationCloseSheet {
  readonly station: string
  readonly code: string
  readonly date: string
  readonly practice: boolean
  /** Null while nobody has signed. */
  readonly lead: SignedBy | null
  readonly second: string
  /** A desk changed after this was signed. */
  readonly outdated: boolean
  readonly open: readonly string[]
  readonly unsettled: number
  readonly desks: readonly DeskOnSheet[]
  readonly counts: readonly StationCount[]
  readonly outcomes: readonly { readonly words: string; readonly count: number }[]
  readonly coolersHere: readonly CoolerKeptBack[]
  /** Head of the office's hash chain, and how many entries the record holds. */
  readonly chain: { readonly hash: string; readonly entries: number }
  readonly madeAtMs: number
}

/** The larger where everything then is on one page, else the smaller if that helps. */
const sizes = [9.5, 8.5] as const
const signatureWidth = 140

function titleBlock(sheet: StationCloseSheet, width: number): Block {
  const left = width - signatureWidth - 12
  const { lead } = sheet
  const words = stacked([
    paragraph(
      sheet.practice ? 'Station close sheet · PRACTICE' : 'Station close sheet',
      'bold',
      20,
      left,
    ),
    paragraph(
      `${sheet.station} · station ${sheet.code} · ${sheet.desks.length} ${sheet.desks.length === 1 ? 'desk' : 'desks'} · ${sheet.date}`,
      'bold',
      12,
      left,
    ),
    paragraph(
      lead ? `Lead ${lead.name} · signed ${lead.at}` : 'NOT SIGNED YET',
      'regular',
      11,
      left,
    ),
    ...(sheet.second === '' ? [] : [paragraph(sheet.second, 'regular', 11, left)]),
  ])
  const signature = lead ? signatureField(lead, signatureWidth) : stacked([])
  return stacked([
    beside([
      { x: 0, block: words },
      { x: width - signatureWidth, block: signature },
    ]),
    gap(6),
  ])
}

/** What a supervisor must know, most urgent first; a triangle marks what needs attention. */
export function stationAttention(sheet: StationCloseSheet): string[] {
  const off = sheet.counts.filter(({ expected, counted }) => expected !== counted)
  const without = off.filter(({ reason }) => reason === '').length
  const amended = sheet.desks.filter((desk) => desk.amended.length > 0)
  return [
    ...(sheet.outdated
      ? ['▲ A desk has changed since this was signed: sign the station again.']
      : []),
    ...sheet.open.map((say) => `▲ ${say}`),
    off.length === 0
      ? '✓ Over all desks every count agrees.'
      : `▲ ${off.length} of ${sheet.counts.length} counts differ over all desks. ${without === 0 ? 'Each has a reason.' : `${without} WITHOUT A REASON.`}`,
    amended.length === 0
      ? '✓ No desk was amended after its close.'
      : `▲ Amended after its close: ${amended.map(({ desk }) => `desk ${desk}`).join(', ')}.`,
    sheet.unsettled === 0
      ? '✓ No discrepancy of the record is open.'
      : `▲ ${sheet.unsettled} ${sheet.unsettled === 1 ? 'discrepancy' : 'discrepancies'} of the record not settled.`,
  ]
}

function attentionBlock(sheet: StationCloseSheet, width: number): Block {
  const words = stacked(
    stationAttention(sheet).map((line) => paragraph(line, 'bold', 12, width - 16)),
  )
  const height = words.height + 10
  return {
    height: height + 2,
    marks: [boxMark(0.5, 0.5, width - 1, height, 1), ...shifted(words.marks, 8, 5)],
  }
}

const deskColumns: readonly Column[] = [
  { title: 'Desk', share: 0.12 },
  { title: 'Closed by', share: 0.22 },
  { title: 'Second person', share: 0.3 },
  { title: 'When', share: 0.36 },
]

function deskSection({ desks }: StationCloseSheet, style: TableStyle): Section {
  const rows = desks.map(({ desk, closed, second, at }) => ({
    cells: [desk, closed, second, at],
    bold: at === '',
  }))
  return tableSection('Desks, each closed by itself', deskColumns, rows, 'none.', style)
}

const countColumns: readonly Column[] = [
  { title: 'What', share: 0.21 },
  { title: 'Expected', share: 0.11, align: 'right' },
  { title: 'Counted', share: 0.1, align: 'right' },
  { title: 'Variance', share: 0.1, align: 'right' },
  { title: 'By desk: counted of expected', share: 0.28 },
  { title: 'Reason over all desks', share: 0.2 },
]

function countSection({ counts }: StationCloseSheet, style: TableStyle): Section {
  const rows = counts.map(({ what, expected, counted, between, byDesk, reason }) => {
    const off = expected !== counted
    const moved = between === 0 ? '' : `; between desks ${signedNumber(between)}`
    return {
      cells: [
        what,
        String(expected),
        String(counted),
        signedNumber(counted - expected),
        byDesk + moved,
        off && reason === '' ? 'NO REASON GIVEN' : reason,
      ],
      bold: off,
    }
  })
  return tableSection('Counts over all desks', countColumns, rows, 'nothing was counted.', style)
}

const amendmentColumns: readonly Column[] = [
  { title: 'Desk', share: 0.14 },
  { title: 'What came after its close', share: 0.86 },
]

function amendmentSection({ desks }: StationCloseSheet, style: TableStyle): Section {
  const rows = desks.flatMap(({ desk, amended }) => amended.map((say) => ({ cells: [desk, say] })))
  return tableSection('Amended after a desk’s close', amendmentColumns, rows, 'nothing.', style)
}

function proofBlock({ chain }: StationCloseSheet, { width, size }: TableStyle): Block {
  const head = chain.hash === '' ? '' : `, chain head of the office ${chain.hash.slice(0, 16)}`
  const proof = `Proof: the merged record holds ${chain.entries} entries${head}.`
  return stacked([gap(10), paragraph(proof, 'regular', size, width)])
}

function sectionsOf(sheet: StationCloseSheet, style: TableStyle): Section[] {
  const { width, size } = style
  return [
    { rows: [titleBlock(sheet, width), attentionBlock(sheet, width)] },
    deskSection(sheet, style),
    countSection(sheet, style),
    outcomeSection(sheet, { width: width / 2 - 8, size }),
    coolerSection(sheet, style),
    amendmentSection(sheet, style),
    { rows: [proofBlock(sheet, style)] },
  ]
}

/** The station close sheet as a PDF. */
export function printStationCloseSheet(
  sheet: StationCloseSheet,
  paper: PaperName,
): Promise<Uint8Array> {
  const width = innerWidth(paper)
  const kind = sheet.practice ? 'PRACTICE · station close sheet' : 'Station close sheet'
  const title = `${kind} · ${sheet.station} · ${sheet.code} · ${sheet.date}`
  const [large, small] = sizes.map((size) =>
    paperPages(paper, sectionsOf(sheet, { width, size }), () => title),
  )
  const pages = (large?.length === 1 || small?.length !== 1 ? large : small) ?? []
  return writePdf(pages, { title, madeAtMs: sheet.madeAtMs })
}
