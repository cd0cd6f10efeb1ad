/** A sentence begins with a capital. */
export function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
