/** The label stock loaded in this window's printer: a fact of the laptop, not of the station. */
import { useSyncExternalStore } from 'react'
import { StockName } from '../../shared-types/label.ts'

export const stockWords: Record<StockName, string> = {
  'roll-51x25': 'roll, 51 × 25 mm',
  'sheet-letter': 'sheets, Letter',
  'sheet-a4': 'sheets, A4',
}

const settingKey = 'duskline.labelStock'
const listeners = new Set<() => void>()

function stockHere(): StockName {
  return StockName.safeParse(localStorage.getItem(settingKey)).data ?? 'roll-51x25'
}

/** Remembers the stock that labels are printed on from this window. */
export function setLabelStock(stock: StockName): void {
  localStorage.setItem(settingKey, stock)
  for (const listener of listeners) listener()
}

function onChange(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

export function useLabelStock(): StockName {
  return useSyncExternalStore(onChange, stockHere)
}
