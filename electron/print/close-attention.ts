/** The first lines of the close sheet: whether anything needs a supervisor's attention. */
import type { CloseSheet, CountedThing } from './close-sheet.ts'

function plural(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`
}

function countsLine(counts: readonly CountedThing[]): string {
  const off = counts.filter(({ expected, counted }) => expected !== counted)
  const unexplained = off.filter(({ reason }) => reason === '')
  if (off.length === 0) return `✓ All ${counts.length} counts agree.`
  const reasons =
    unexplained.length === 0 ? 'Each has a reason.' : `${unexplained.length} WITHOUT A REASON.`
  return `▲ ${off.length} of ${counts.length} counts differ. ${reasons}`
}

/** What a supervisor must know, most urgent first; a triangle marks what needs attention. */
export function attentionLines(sheet: CloseSheet): string[] {
  const outside = sheet.readingsOutside.length
  const bagsHere = sheet.coolersHere.reduce((sum, { bags }) => sum + bags, 0)
  return [
    countsLine(sheet.counts),
    outside === 0
      ? '✓ All temperature readings within limits.'
      : `▲ ${plural(outside, 'temperature reading', 'temperature readings')} outside limits.`,
    ...(sheet.placesMissing === 0
      ? []
      : [
          `▲ Place of harvest missing or not precise enough: ${plural(sheet.placesMissing, 'animal', 'animals')}.`,
        ]),
    bagsHere === 0
      ? '✓ No bags are left in coolers here.'
      : `▲ ${plural(bagsHere, 'bag is', 'bags are')} still in coolers here.`,
    ...(sheet.amendments.length === 0
      ? []
      : [
          `▲ Amended after an earlier close: ${plural(sheet.amendments.length, 'entry', 'entries')}.`,
        ]),
  ]
}
