/** What a printing system says of a printer, in words for the person beside it. */

/** Reasons of RFC 8011 section 5.4.12 (printer-state-reasons), each with what to do. */
const reasons: readonly (readonly [RegExp, string])[] = [
  [/media-jam/, 'the labels are jammed in it'],
  [/media-(?:empty|needed)/, 'it is out of labels'],
  [/(?:cover|door|interlock)-open/, 'its cover is open'],
  [/(?:toner|marker)-(?:supply-)?(?:empty|low)/, 'its ribbon or toner is used up'],
  [
    /offline|connecting-to-device|timed-out|shutdown/,
    'it does not answer: is it on and plugged in?',
  ],
  [/paused|moving-to-paused|stopped/, 'it was paused'],
]

/** In the way of printing; null for nothing that is known of. */
export function troubleWords(status: string | null, alerts: string | null): string | null {
  const said = `${alerts ?? ''} ${status ?? ''}`.toLowerCase()
  const found = reasons.find(([pattern]) => pattern.test(said))
  if (found) return found[1]
  return status === 'disabled' ? 'it was stopped on this laptop' : null
}
