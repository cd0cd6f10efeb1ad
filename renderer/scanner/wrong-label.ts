/** Refusals of a label in the wrong place: one more try with the same label does not help. */
const codes: ReadonlySet<string> = new Set([
  'wrong-label',
  'another-station',
  'bag-of-another-kit',
  'wrong-side',
  'kit-of-another-animal',
  'check-of-another-site',
  'bag-in-another-cooler',
  'bag-not-in-cooler',
  'label-void',
])

export function isWrongLabel(code: string | undefined): boolean {
  return code !== undefined && codes.has(code)
}
