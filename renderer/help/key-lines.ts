/** The map of the keys, read from what is bound on the screen: it cannot name a key that does nothing. */
import { isSingle, keysNow } from '../scanner/keys.ts'
import { helpWords } from './words.ts'

export interface KeyLine {
  readonly key: string
  readonly words: string
  /** The part of the screen it belongs to. */
  readonly where: string
}

/** Every key that answers now with the words of what it presses, in the order of the screen. */
export function keyLines(): KeyLine[] {
  const lines = keysNow().map(({ key, element }) => ({
    key,
    words: wordsOf(element),
    where: whereOf(element, key),
    element,
  }))
  const shown = lines.filter(({ words }) => words !== '')
  const unique = new Map(shown.map((line) => [`${line.key} ${line.words}`, line]))
  return [...unique.values()]
    .toSorted((a, b) => inDocument(a.element, b.element))
    .map(({ key, words, where }) => ({ key, words, where }))
}

function inDocument(a: Element, b: Element): number {
  return a.compareDocumentPosition(b) & Node.DOCUMENT_POSITION_FOLLOWING ? -1 : 1
}

/** The words a person reads on it, without its key and without why it is off. */
function wordsOf(element: Element): string {
  const named = element.getAttribute('aria-label')
  if (named !== null) return named
  // Words that stand for several things are read out in full; so are they here.
  const full = element.querySelector('.unseen')?.textContent
  if (full) return full
  const copy = (element.closest('label') ?? element).cloneNode(true) as Element
  for (const each of copy.querySelectorAll('.key-cap, .unseen, small, svg')) each.remove()
  return (copy.textContent ?? '').replace(/\s+/g, ' ').trim()
}

/** The heading of the part it stands in. */
function whereOf(element: Element, key: string): string {
  const part = element.closest('fieldset, section, [role=dialog], nav, search, header, footer')
  const words = part === null ? '' : headingOf(part)
  if (isSingle(key)) return words
  return part?.matches('section, [role=dialog]') ? words : helpWords.everywhere
}

function headingOf(part: Element): string {
  const id = part.getAttribute('aria-labelledby')
  const heading =
    (id === null ? null : document.getElementById(id)) ?? part.querySelector('legend, h1, h2')
  return (part.getAttribute('aria-label') ?? heading?.firstChild?.textContent ?? '').trim()
}
