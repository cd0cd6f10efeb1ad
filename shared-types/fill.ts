/** Sentences kept apart from the code, with places in braces for what differs. */

/**
 * `fill('Kit {kit} opened.', { kit: 'K0007' })`. A place with no word or number for it is a bug and
 * stays visible.
 */
export function fill(text: string, values: Readonly<Record<string, unknown>>): string {
  return text.replace(/\{(\w+)\}/g, (place, name: string) => {
    const value = values[name]
    return typeof value === 'string' || typeof value === 'number' ? String(value) : place
  })
}
