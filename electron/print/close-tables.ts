/** The tables of the close sheet. */
import { grouped } from '../../shared-types/sample-number.ts'
import type { LabelAccount } from '../../shared-types/views/close.ts'
import type { CloseSheet, CountedThing } from './close-sheet.ts'
import { type Block, type Section, beside, gap, stacked } from './flow.ts'
import { type Column, type TableStyle, tableSection } from './table.ts'

/** A variance with its sign. */
export function signedNumber(value: number): string {
  return value > 0 ? `+${value}` : String(value).replace('-', '−')
}

const countColumns: readonly Column[] = [
  { title: 'What', share: 0.25 },
  { title: 'Place', share: 0.16 },
  { title: 'Expected', share: 0.12, align: 'right' },
  { title: 'Counted', share: 0.11, align: 'right' },
  { title: 'Variance', share: 0.11, align: 'right' },
  { title: 'Reason', share: 0.25 },
]

export function countsSection(counts: readonly CountedThing[], style: TableStyle): Section {
  const rows = counts.map(({ what, place, expected, counted, reason }) => {
    const off = expected !== counted
    const why = off && reason === '' ? 'NO REASON GIVEN' : reason
    const numbers = [expected, counted].map(String)
    return { cells: [what, place, ...numbers, signedNumber(counted - expected), why], bold: off }
  })
  return tableSection('Counts', countColumns, rows, 'nothing was counted.', style)
}

function minutes(value: number | null): string {
  return value === null ? 'not known' : `${Math.round(value)} min`
}

const pairColumns = (title: string): readonly Column[] => [
  { title, share: 0.68 },
  { title: '', share: 0.32, align: 'right' },
]

export function outcomeSection(
  { outcomes }: Pick<CloseSheet, 'outcomes'>,
  style: TableStyle,
): Section {
  const total = outcomes.reduce((sum, { count }) => sum + count, 0)
  const rows = outcomes.map(({ words, count }) => ({ cells: [words, String(count)] }))
  const all = { cells: ['All', String(total)], bold: true }
  return tableSection('Animals', pairColumns('Outcome'), [...rows, all], '', style)
}

/** The labels under the waits: both are short, and stand beside the outcomes. */
export function waitAndLabelSection(sheet: CloseSheet, style: TableStyle): Section {
  const waits = waitSection(sheet, style)
  if (!sheet.labels) return waits
  const { head, rows } = labelSection(sheet.labels, style)
  return { ...waits, rows: [...waits.rows, gap(4), ...(head ? [head] : []), ...rows] }
}

function labelSection(labels: LabelAccount, style: TableStyle): Section {
  const facts: [string, number][] = [
    ['Printed', labels.printed],
    ['Used', labels.used],
    ['Void', labels.void],
    ['Not used, found', labels.unused],
    ['Unaccounted for', labels.unaccounted],
  ]
  const rows = facts.map(([words, count]) => ({ cells: [words, String(count)] }))
  return tableSection('Labels', pairColumns('What became of them'), rows, '', style)
}

function waitSection({ waits }: CloseSheet, style: TableStyle): Section {
  const rows = [
    { cells: ['Median', minutes(waits.medianMinutes)] },
    { cells: ['Nine of ten within', minutes(waits.ninetiethMinutes)] },
  ]
  return tableSection('Waits', pairColumns('Check-in to sampler'), rows, '', style)
}

/** Sites down, tissue checks across. */
export function sampleSection({ samples }: CloseSheet, style: TableStyle): Section {
  const checks = [...new Set(samples.map(({ check }) => check))]
  const sites = [...new Set(samples.map(({ site }) => site))]
  const count = (site: string, check: string): number =>
    samples.reduce(
      (sum, each) => (each.site === site && each.check === check ? sum + each.count : sum),
      0,
    )
  const columns: Column[] = [
    { title: 'Site', share: 0.22 },
    ...checks.map((title) => ({ title, share: 0.78 / checks.length, align: 'right' as const })),
  ]
  const rows = sites.map((site) => ({
    cells: [site, ...checks.map((check) => String(count(site, check)))],
  }))
  return tableSection('Samples by site and tissue check', columns, rows, 'none taken.', style)
}

/** Unfit tissue by reason; in the lead's copy by sampler too. */
export function unfitSection({ unfit, unfitBySampler }: CloseSheet, style: TableStyle): Section {
  const sums = new Map<string, number>()
  for (const { why, count } of unfit) sums.set(why, (sums.get(why) ?? 0) + count)
  const rows = [...sums].map(([why, count]) => {
    const who = unfit
      .filter((each) => each.why === why && each.sampler !== '')
      .map(({ sampler, count: own }) => `${sampler} ${own}`)
    const named = unfitBySampler && who.length > 0 ? ` (${who.join(', ')})` : ''
    return { cells: [why + named, String(count)] }
  })
  const columns = pairColumns(unfitBySampler ? 'Reason (and by whom, for training)' : 'Reason')
  return tableSection('Tissue unfit as a sample', columns, rows, 'none.', style)
}

/** Two short tables next to each other; long ones one after the other. */
export function sideBySide(left: Section, right: Section, width: number): Section[] {
  if (left.rows.length + right.rows.length > 20) return [left, right]
  const whole = ({ head, rows }: Section): Block => stacked([...(head ? [head] : []), ...rows])
  const pair = [
    { x: 0, block: whole(left) },
    { x: width / 2 + 8, block: whole(right) },
  ]
  return [{ rows: [beside(pair)] }]
}

const readingColumns: readonly Column[] = [
  { title: 'Cooler', share: 0.32 },
  { title: '°C', share: 0.08, align: 'right' },
  { title: 'Limits', share: 0.16 },
  { title: 'When', share: 0.24 },
  { title: 'Read by', share: 0.2 },
]

export function readingSection({ readingsOutside }: CloseSheet, style: TableStyle): Section {
  const rows = readingsOutside.map(({ cooler, celsius, limits, at, by }) => ({
    cells: [cooler, celsius.toFixed(1).replace('-', '−'), limits, at, by],
  }))
  return tableSection('Temperature readings outside limits', readingColumns, rows, 'none.', style)
}

const coolerColumns: readonly Column[] = [
  { title: 'Cooler', share: 0.3 },
  { title: 'Name', share: 0.3 },
  { title: 'Bags', share: 0.1, align: 'right' },
  { title: 'Seal', share: 0.3 },
]

export function coolerSection(
  { coolersHere }: Pick<CloseSheet, 'coolersHere'>,
  style: TableStyle,
): Section {
  const rows = coolersHere.map(({ cooler, name, bags, seal }) => ({
    cells: [grouped(cooler), name, String(bags), seal === '' ? 'NOT SEALED' : seal],
  }))
  return tableSection('Still in coolers here', coolerColumns, rows, 'nothing.', style)
}

const amendmentColumns: readonly Column[] = [
  { title: 'When', share: 0.28 },
  { title: 'By', share: 0.16 },
  { title: 'What and why', share: 0.56 },
]

export function amendmentSection({ amendments }: CloseSheet, style: TableStyle): Section {
  const rows = amendments.map(({ at, by, words }) => ({ cells: [at, by, words] }))
  return tableSection('Amendments after an earlier close', amendmentColumns, rows, 'none.', style)
}
