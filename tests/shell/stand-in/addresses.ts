/**
 * Chromium alone does not know the `app` scheme, so its pages lie at a secure origin that stands for
 * it. The main process sees `app://duskline` only, the page its stand-in only.
 */
const standIn = 'https://duskline.test'
const own = 'app://duskline'

/** An address as the main process of Electron would see it. */
export function toElectron(url: string): string {
  return url.replace(/^(blob:)?https:\/\/duskline\.test(?=\/|$)/, `$1${own}`)
}

/** An address as Chromium can open it. */
export function toChromium(url: string): string {
  return url.replace(/^(blob:)?app:\/\/duskline(?=\/|$)/, `$1${standIn}`)
}
