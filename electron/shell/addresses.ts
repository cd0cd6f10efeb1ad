/** Which addresses are our own. Each is compared whole or up to its slash, never by what it contains. */

export const scheme = 'app'
export const ownOrigin = 'app://duskline'
/** The one page of the program. */
export const entryUrl = `${ownOrigin}/`
/** The same page as a screen outside shows it. */
export const boardUrl = `${entryUrl}#board`

/** The page itself, whatever screen its hash or query names. */
export function isEntry(url: string): boolean {
  return url.split(/[?#]/, 1)[0] === entryUrl
}

/** A document, such as a PDF, that our own page holds in memory. */
export function isOwnBlob(url: string): boolean {
  return url.startsWith(`blob:${ownOrigin}/`)
}

/** What Chromium's PDF viewer and its developer tools are made of; all of it lies inside the runtime. */
const runtimeSchemes = ['chrome-extension:', 'chrome:', 'devtools:']

/** Whether anything at all may be fetched from there: nothing comes over a network. */
export function mayLoad(url: string): boolean {
  if (url.startsWith(entryUrl) || isOwnBlob(url)) return true
  return url.startsWith('data:') || runtimeSchemes.some((prefix) => url.startsWith(prefix))
}
