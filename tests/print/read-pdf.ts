/** Reads printed documents back: pixels by pdf.js, barcodes by ZXing, neither of which drew them. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { type Canvas, createCanvas } from '@napi-rs/canvas'
import { OPS, type PDFPageProxy, getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'

const wasm = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm')
// Without this the reader would fetch its own code from the network.
prepareZXingModule({ overrides: { wasmBinary: readFileSync(wasm).buffer as ArrayBuffer } })

export interface Sighting {
  readonly format: string
  readonly text: string
  readonly page: number
  /** Leftmost and topmost dot of the symbol, without its quiet zone. */
  readonly left: number
  readonly top: number
}

/** What `read` makes of each page. pdf.js takes the bytes away, so it is given a copy. */
async function eachPage<T>(
  pdf: Uint8Array,
  read: (page: PDFPageProxy) => Promise<T>,
): Promise<T[]> {
  const task = getDocument({ data: pdf.slice(), verbosity: 0, useSystemFonts: false })
  const document = await task.promise
  const results: T[] = []
  for (let number = 1; number <= document.numPages; number++)
    results.push(await read(await document.getPage(number)))
  await task.destroy()
  return results
}

/** Each page drawn at so many dots an inch. */
export function drawnPages(pdf: Uint8Array, dpi: number): Promise<Canvas[]> {
  return eachPage(pdf, async (page) => {
    const viewport = page.getViewport({ scale: dpi / 72 })
    const canvas = createCanvas(Math.round(viewport.width), Math.round(viewport.height))
    await page.render({ canvas: canvas as never, viewport }).promise
    return canvas
  })
}

/** Each page's words in the order they were drawn, one space between them. */
export function pageTexts(pdf: Uint8Array): Promise<string[]> {
  return eachPage(pdf, async (page) => {
    const { items } = await page.getTextContent()
    const words = items.map((item) => ('str' in item ? item.str : '')).join(' ')
    return words.replace(/\s+/g, ' ').trim()
  })
}

export interface Word {
  readonly text: string
  readonly left: number
  readonly right: number
  /** Distance of its base line from the top of the page, and its type size: points. */
  readonly base: number
  readonly size: number
}

/** Where each page's words stand. */
export function pageWords(pdf: Uint8Array): Promise<Word[][]> {
  return eachPage(pdf, async (page) => {
    const { items } = await page.getTextContent()
    const { height } = page.getViewport({ scale: 1 })
    return items.flatMap((item) => {
      if (!('str' in item) || item.str.trim() === '') return []
      const [size, , , , left, base] = item.transform as [number, 0, 0, number, number, number]
      return [{ text: item.str, left, right: left + item.width, base: height - base, size }]
    })
  })
}

/** Pairs of words that run into each other on the same line or lines too close together. */
export function collisions(words: readonly Word[]): string[] {
  return words.flatMap((a, place) =>
    words
      .slice(place + 1)
      .filter((b) => a.left < b.right - 0.5 && b.left < a.right - 0.5)
      .filter((b) => Math.abs(a.base - b.base) < 0.9 * Math.min(a.size, b.size))
      .map((b) => `${a.text} / ${b.text}`),
  )
}

/** How many times the document paints a picture rather than a line, a shape or a letter. */
export async function pictureCount(pdf: Uint8Array): Promise<number> {
  const picturing = Object.entries(OPS)
    .filter(([name]) => /paint.*image/i.test(name))
    .map(([, code]) => code)
  const counts = await eachPage(pdf, async (page) => {
    const { fnArray } = await page.getOperatorList()
    return fnArray.filter((code) => picturing.includes(code)).length
  })
  return counts.reduce((sum, count) => sum + count, 0)
}

/** Every Code 128 and Data Matrix that ZXing finds on the drawn pages. */
export async function sightings(canvases: readonly Canvas[]): Promise<Sighting[]> {
  const found: Sighting[] = []
  for (const [page, canvas] of canvases.entries()) {
    const image = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height)
    const symbols = await readBarcodes(image as never, {
      formats: ['Code128', 'DataMatrix'],
      maxNumberOfSymbols: 255,
      tryHarder: true,
    })
    for (const { format, text, position } of symbols) {
      const { topLeft, bottomLeft, topRight } = position
      const left = Math.min(topLeft.x, bottomLeft.x)
      found.push({ format, text, page, left, top: Math.min(topLeft.y, topRight.y) })
    }
  }
  return found
}

/** What ZXing reads in a picture file. */
export async function codesIn(picture: Uint8Array): Promise<{ format: string; text: string }[]> {
  const symbols = await readBarcodes(picture, {
    formats: ['Code128', 'DataMatrix'],
    maxNumberOfSymbols: 60,
  })
  return symbols.map(({ format, text }) => ({ format, text }))
}
