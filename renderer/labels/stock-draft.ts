/** A label stock as it is being described: texts, until the desk takes them as measurements. */
import type { LabelStock } from '../../shared-types/label-stock.ts'

export const fields = {
  widthMm: 'Label width',
  heightMm: 'Label height',
  marginMm: 'Margin inside',
  gapMm: 'Gap between',
  paperWidthMm: 'Paper width',
  paperHeightMm: 'Paper height',
  columns: 'Labels across',
  rows: 'Labels down',
  leftMm: 'Paper edge to first label, left',
  topMm: 'Paper edge to first label, top',
  stepAcrossMm: 'Left edge to left edge (pitch)',
  stepDownMm: 'Top edge to top edge (pitch)',
} as const
export type FieldName = keyof typeof fields

const size = ['widthMm', 'heightMm', 'marginMm'] as const
export const rollFields: readonly FieldName[] = [...size, 'gapMm']
export const sheetFields: readonly FieldName[] = [
  ...size,
  'paperWidthMm',
  'paperHeightMm',
  'columns',
  'rows',
  'leftMm',
  'topMm',
  'stepAcrossMm',
  'stepDownMm',
]

export interface StockDraft {
  readonly kind: LabelStock['kind']
  readonly dpi: '203' | '300' | '600'
  /** Degrees Celsius; empty where its maker does not say. */
  readonly coldC: string
  readonly texts: Readonly<Partial<Record<FieldName, string>>>
}

export const emptyDraft: StockDraft = {
  kind: 'roll',
  dpi: '203',
  coldC: '',
  texts: { marginMm: '1.2', gapMm: '3' },
}

export function draftOfStock(stock: LabelStock): StockDraft {
  const names = stock.kind === 'roll' ? rollFields : sheetFields
  const measures = stock as unknown as Record<FieldName, number>
  return {
    kind: stock.kind,
    dpi: String(stock.dpi) as StockDraft['dpi'],
    coldC: stock.coldC === null ? '' : String(stock.coldC),
    texts: Object.fromEntries(names.map((name) => [name, String(measures[name])])),
  }
}

/** A length as people write it, with a point or a comma; NaN for anything else. */
function lengthOf(text: string | undefined): number {
  const tidy = (text ?? '').trim().replace(',', '.')
  return /^\d{1,3}(?:\.\d{1,2})?$/.test(tidy) ? Number(tidy) : Number.NaN
}

/** The first field that holds no number, or null. */
export function badField(draft: StockDraft): FieldName | 'coldC' | null {
  const names = draft.kind === 'roll' ? rollFields : sheetFields
  const bad = names.find((name) => Number.isNaN(lengthOf(draft.texts[name])))
  if (bad) return bad
  return draft.coldC.trim() === '' || /^-?\d{1,3}$/.test(draft.coldC.trim()) ? null : 'coldC'
}

/** What the draft says; the desk checks it. */
export function stockOfDraft(draft: StockDraft): LabelStock {
  const names = draft.kind === 'roll' ? rollFields : sheetFields
  const measures = Object.fromEntries(names.map((name) => [name, lengthOf(draft.texts[name])]))
  const coldC = draft.coldC.trim() === '' ? null : Number(draft.coldC)
  return { kind: draft.kind, dpi: Number(draft.dpi), coldC, ...measures } as LabelStock
}
