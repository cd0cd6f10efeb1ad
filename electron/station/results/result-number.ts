/** A sample number out of a laboratory's file, where spreadsheets may have been at work on it. */
import type { RowDoubt } from '../../../shared-types/laboratory-result.ts'
import { BagNumber, readNumberFor } from '../../../shared-types/sample-number.ts'

export type ReadBag =
  | { readonly ok: true; readonly bag: BagNumber }
  /** `meant`: what it was before a spreadsheet took its leading noughts, for a person to confirm. */
  | { readonly ok: false; readonly doubt: RowDoubt; readonly meant: BagNumber | null }

const scientific = /^[+-]?\d+(?:[.,]\d+)?e[+-]?\d+$/i

/** The bag a cell names; the check character is verified before anything else happens. */
export function readBag(text: string): ReadBag {
  const tidy = text.trim().replace(/^'|^="?|"$/g, '')
  const read = readNumberFor(['L', 'R', 'X'], tidy)
  if (read.ok) return { ok: true, bag: BagNumber.parse(read.value) }
  if (scientific.test(tidy)) return { ok: false, doubt: 'number-damaged', meant: null }
  const meant = noughtsPutBack(tidy)
  if (meant !== null) return { ok: false, doubt: 'number-damaged', meant }
  return { ok: false, doubt: doubtOf(read.refusal.code), meant: null }
}

function doubtOf(code: string): RowDoubt {
  if (code === 'check-character-wrong') return 'check-character-wrong'
  return code === 'wrong-label' ? 'not-a-bag' : 'number-not-read'
}

const shortened = /^(\d{1,2})-?([0-9A-Z]{3})-?([A-Z])(\d{1,4})-?([LRX])-?([0-9A-Z])$/i

/** The number with the noughts a spreadsheet drops (`6`, `A42`) back in their places; null if that is none. */
function noughtsPutBack(text: string): BagNumber | null {
  const read = shortened.exec(text)
  if (!read) return null
  const [, season = '', station = '', letter = '', serial = '', part = '', check = ''] = read
  const whole = `${season.padStart(2, '0')}${station}${letter}${serial.padStart(4, '0')}${part}${check}`
  const bag = BagNumber.safeParse(whole.toUpperCase())
  return bag.success ? bag.data : null
}
