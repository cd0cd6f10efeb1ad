/** What this laptop prints on, as the desk remembers it: a stock and a printer for each kind of label. */
import type { StockName } from '../../shared-types/label-stock.ts'
import type { LabelKind, PrintingView, StockView } from '../../shared-types/views/printing.ts'
import { nothing, useAsk } from '../desk/use-desk.ts'

const onPdf = { printer: null, stock: 'roll-51x25' }

const beforeAnswer: PrintingView = {
  chosen: { kits: onPdf, coolers: onPdf, badges: onPdf },
  offsets: {},
  making: null,
  job: null,
}

export function usePrinting(): PrintingView {
  return useAsk('printing', nothing).data ?? beforeAnswer
}

export function useStocks(): readonly StockView[] {
  return useAsk('stocks', nothing).data?.stocks ?? []
}

/** The stock that labels of a kind are printed on from this laptop. */
export function useLabelStock(kind: LabelKind): StockName {
  return usePrinting().chosen[kind].stock
}

export const kindWords: Record<LabelKind, string> = {
  kits: 'kit labels',
  coolers: 'cooler labels',
  badges: 'badges',
}
