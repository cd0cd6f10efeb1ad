/** A typed number, comma or point; what is no number stays text, for the schema to refuse. */
export function typedNumber(text: string): number | string {
  const tidy = text.trim().replace(',', '.').replace('−', '-')
  return tidy === '' || Number.isNaN(Number(tidy)) ? text : Number(tidy)
}
