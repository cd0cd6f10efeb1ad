/**
 * Printed labels as other people's programs see them: drawn by poppler as a print head burns them, each
 * dot or not, and read by ZXing, by zbar (Code 128) and by libdmtx (Data Matrix). None of them shares code
 * with what drew the barcodes. Left out, by name, where not installed.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createCanvas, loadImage } from '@napi-rs/canvas'
import { afterAll, describe, expect, test, vi } from 'vitest'
import { symbolSize } from '../../electron/print/barcode.ts'
import { layKitLabels } from '../../electron/print/kit-labels.ts'
import { type LabelRun, someOfRun, writeLabels } from '../../electron/print/label-run.ts'
import type { BarcodeMark, Mark } from '../../electron/print/mark.ts'
import { commonStocks } from '../../shared-types/common-stocks.ts'
import type { Dpi, LabelStock } from '../../shared-types/label-stock.ts'
import { bagNumber, kitNumber, sampleNumber } from '../../shared-types/sample-number.ts'
import { codesIn } from '../print/read-pdf.ts'
import { yes } from '../print/runs.ts'
import { assignedKit, batch, desk, firstCopies, reservedKit } from '../print/samples.ts'

function installed(program: string): boolean {
  return spawnSync(program, ['-V']).error === undefined
}
const poppler = installed('pdftoppm')
const zbar = installed('zbarimg')
const dmtx = installed('dmtxread')

function run(program: string, args: readonly string[]): string {
  const { stdout, stderr, error } = spawnSync(program, args, { encoding: 'utf8' })
  if (error) throw new Error(`${program}: ${stderr}`)
  return stdout
}

const folder = mkdtempSync(join(tmpdir(), 'labels-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** A part of a page in dots. */
interface Crop {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** Pages as the print head burns them, PNG files in their order. */
function burnt(file: string, dpi: number, crop?: Crop, look = '-mono'): string[] {
  const prefix = `${file}-${dpi}${crop ? `-${crop.x}-${crop.y}` : ''}${look}`
  const part = crop
    ? ['-x', crop.x, '-y', crop.y, '-W', crop.width, '-H', crop.height].map(String)
    : []
  const args = ['-r', String(dpi), look, '-png', ...part, join(folder, `${file}.pdf`)]
  run('pdftoppm', [...args, join(folder, prefix)])
  return readdirSync(folder)
    .filter((name) => name.startsWith(`${prefix}-`) && name.endsWith('.png'))
    .toSorted()
    .map((name) => join(folder, name))
}

async function print(file: string, made: LabelRun): Promise<void> {
  writeFileSync(join(folder, `${file}.pdf`), await writeLabels(made))
}

const byZxing = async (pages: readonly string[]) => {
  const read: string[] = []
  for (const page of pages)
    for (const { format, text } of await codesIn(readFileSync(page))) read.push(`${format} ${text}`)
  return read.toSorted()
}

/** It tells each number of a picture once. */
const byZbar = (pages: readonly string[]) =>
  run('zbarimg', ['-q', '--raw', '-Sdisable', '-Scode128.enable', ...pages])
    .trim()
    .split('\n')
    .filter(Boolean)
    .toSorted()

const serial = 43
const bags = (['L', 'R', 'X'] as const).map((part) => bagNumber(desk, serial, part))
const left = bagNumber(desk, serial, 'L')
const kit = kitNumber(desk, serial)
const stub = sampleNumber(desk, serial, 'H')
/** The labels of one kit: the kit's own number is on its outer bag and on its data card. */
const linear = [...bags, kit, kit, stub].toSorted()
const matrices = [...bags, kit].toSorted()

const sizes = Object.entries(commonStocks).filter(([name]) => name !== 'roll-50.8x25.4-300')
const cases = sizes.flatMap(([name, stock]) =>
  ([203, 300, 600] as const).map((dpi) => [name, dpi, { ...stock, dpi } as LabelStock] as const),
)

/** The rows of a sheet that the labels of one kit fill; a roll is looked at whole. */
function filledPart(made: LabelRun, dpi: Dpi): Crop | undefined {
  const { stock } = made
  if (stock.kind === 'roll') return undefined
  const rows = Math.ceil(made.blanks / stock.columns)
  const dots = (mm: number) => Math.ceil((mm / 25.4) * dpi)
  const height = dots(stock.topMm + rows * stock.stepDownMm)
  return { x: 0, y: 0, width: dots(stock.paperWidthMm), height }
}

const isMatrix = (mark: Mark): mark is BarcodeMark =>
  mark.kind === 'barcode' && mark.symbol.width === mark.symbol.height

/** Where each matrix lies, with its quiet zone. */
function matrixCrops({ pages, stock }: LabelRun): { page: number; crop: Crop; text: string }[] {
  const dot = 72 / stock.dpi
  return pages.flatMap(({ marks }, page) =>
    marks.filter(isMatrix).map(({ x, y, symbol }) => {
      const side = Math.round(symbolSize(symbol).width / dot)
      const crop = { x: Math.round(x / dot), y: Math.round(y / dot), width: side, height: side }
      return { page, crop, text: symbol.text }
    }),
  )
}

vi.setConfig({ testTimeout: 90_000 })

describe.skipIf(!poppler).each(cases)('the labels of a kit on %s at %i dpi', (name, dpi, stock) => {
  // At 600 dpi a sheet is slow to look at: there two labels stand for all.
  const isFew = dpi === 600
  const labels = isFew ? firstCopies(['left', 'card']) : assignedKit(serial).labels
  const onIt = isFew ? { linear: [left, kit].toSorted(), matrices: [left] } : { linear, matrices }
  const made = yes(layKitLabels([{ ...assignedKit(serial), labels }], stock, batch))
  const file = `${name}-${dpi}`
  let pages: string[] | undefined
  const drawn = async () => {
    if (pages === undefined) await print(file, made)
    pages ??= burnt(file, dpi, filledPart(made, dpi))
    return pages
  }

  test('are all read by ZXing', async () => {
    expect(await byZxing(await drawn())).toEqual([
      ...onIt.linear.map((text) => `Code128 ${text}`),
      ...onIt.matrices.map((text) => `DataMatrix ${text}`),
    ])
  })

  test.skipIf(!zbar)('have every Code 128 read by zbarimg', async () => {
    expect([...new Set(byZbar(await drawn()))]).toEqual([...new Set(onIt.linear)])
  })

  test.skipIf(!dmtx)('have the Data Matrix of a bag read by dmtxread', async () => {
    await drawn()
    const [first] = matrixCrops(made)
    if (!first) throw new Error('no matrix was printed')
    const [page = ''] = burnt(file, dpi, first.crop, '-mono')
    expect(run('dmtxread', ['-N', '1', '-m', '3000', page])).toBe(first.text)
  })
})

describe.skipIf(!poppler)('labels that have been through a day', () => {
  const labels = [1, 2, 3, 4].map((each) => ({
    ...reservedKit(each),
    labels: firstCopies(['left', 'right', 'card']),
  }))
  const made = yes(layKitLabels(labels, commonStocks['roll-51x25'], batch))
  const withCode = someOfRun(
    made,
    made.labels.flatMap(({ place }, at) => (place === 0 ? [at] : [])),
  )

  /** Each hurt draws the label anew. */
  const hurts = {
    'as printed': (ink: Ink) => ink.draw(),
    'blurred by a dot': (ink: Ink) => ink.blurred(1),
    'blurred by two dots, as wide as a bar': (ink: Ink) => ink.blurred(2),
    'skewed by 2 %': (ink: Ink) => ink.draw([1, 0.02, 0.02, 1]),
    'scratched across': (ink: Ink) => ink.scratched(),
    'faded to a fifth of its contrast': (ink: Ink) => ink.draw([1, 0, 0, 1], 0.2),
    'blurred by a dot, skewed and faded': (ink: Ink) => ink.blurred(1, [1, 0.02, 0.02, 1], 0.4),
  }

  test('are still read, and the share is told', async () => {
    await print('worn', withCode)
    const whole = burnt('worn', 203)
    const shares: Record<string, { zxing: number; zbar: number }> = {}
    for (const [name, hurt] of Object.entries(hurts)) {
      const hurtPages: string[] = []
      for (const [place, page] of whole.entries()) {
        const path = join(folder, `worn-${name.replace(/\W+/g, '-')}-${place}.png`)
        writeFileSync(path, hurt(await Ink.of(page)))
        hurtPages.push(path)
      }
      const seen = new Set((await byZxing(hurtPages)).map((each) => each.split(' ')[1]))
      shares[name] = {
        zxing: seen.size / numbersOn,
        zbar: zbar ? new Set(byZbar(hurtPages)).size / numbersOn : Number.NaN,
      }
    }
    console.log(sharesInWords(shares))
    for (const [name, { zxing, zbar: second }] of Object.entries(shares)) {
      const least = leastRead[name] ?? { zxing: 1, zbar: 1 }
      expect(zxing, `ZXing, ${name}`).toBeGreaterThanOrEqual(least.zxing)
      if (zbar) expect(second, `zbar, ${name}`).toBeGreaterThanOrEqual(least.zbar)
    }
  })
})

/** Numbers on the worn labels: two bags and the kit, of four kits. */
const numbersOn = 12

/** Where not all are read: a blur as wide as a bar leaves zbar nothing, and ZXing its matrices. Measured. */
const leastRead: Readonly<Record<string, { zxing: number; zbar: number }>> = {
  'blurred by two dots, as wide as a bar': { zxing: 0.5, zbar: 0 },
}

function sharesInWords(shares: Record<string, { zxing: number; zbar: number }>): string {
  const percent = (share: number) => (Number.isNaN(share) ? '-' : `${Math.round(share * 100)} %`)
  return Object.entries(shares)
    .map(
      ([name, { zxing, zbar: second }]) =>
        `${name}: ZXing ${percent(zxing)}, zbar ${percent(second)}`,
    )
    .join('\n')
}

type Shape = [number, number, number, number]
type Picture = Awaited<ReturnType<typeof loadImage>>

/** A printed label that can be drawn worse than it is. */
class Ink {
  readonly #image: Picture

  private constructor(image: Picture) {
    this.#image = image
  }

  static async of(path: string): Promise<Ink> {
    return new Ink(await loadImage(path))
  }

  /** Paper all around, as a scanner sees a label. */
  #paper() {
    const { width, height } = this.#image
    const canvas = createCanvas(width + 60, height + 60)
    const pen = canvas.getContext('2d')
    pen.fillStyle = '#fff'
    pen.fillRect(0, 0, canvas.width, canvas.height)
    return { canvas, pen }
  }

  draw([a, b, c, d]: Shape = [1, 0, 0, 1], strength = 1): Buffer {
    const { canvas, pen } = this.#paper()
    pen.globalAlpha = strength
    pen.setTransform(a, b, c, d, 30, 30)
    pen.drawImage(this.#image, 0, 0)
    return canvas.toBuffer('image/png')
  }

  blurred(dots: number, shape: Shape = [1, 0, 0, 1], strength = 1): Buffer {
    const { canvas, pen } = this.#paper()
    pen.filter = `blur(${dots / 2}px)`
    pen.globalAlpha = strength
    pen.setTransform(...shape, 30, 30)
    pen.drawImage(this.#image, 0, 0)
    return canvas.toBuffer('image/png')
  }

  /** A white line three dots wide from corner to corner, as a zip or a knife leaves it. */
  scratched(): Buffer {
    const { canvas, pen } = this.#paper()
    pen.drawImage(this.#image, 30, 30)
    pen.strokeStyle = '#fff'
    pen.lineWidth = 3
    pen.beginPath()
    pen.moveTo(30, 30)
    pen.lineTo(canvas.width - 30, canvas.height - 30)
    pen.stroke()
    return canvas.toBuffer('image/png')
  }
}

test.skipIf(!poppler)(
  'of a batch of 300 kits every number is read, each on its own labels alone',
  async () => {
    const serials = Array.from({ length: 300 }, (_, place) => 101 + place)
    const kits = serials.map(reservedKit)
    const made = yes(layKitLabels(kits, commonStocks['roll-51x25'], batch))
    // The labels after the first of a card or a stub carry no code.
    const coded = made.labels.flatMap(({ place }, at) => (place === 0 ? [at] : []))
    await print('batch', someOfRun(made, coded))
    const seen = new Map<string, number>()
    for (const page of burnt('batch', 203))
      for (const text of new Set((await codesIn(readFileSync(page))).map((each) => each.text)))
        seen.set(text, (seen.get(text) ?? 0) + 1)
    const once = serials.flatMap((each) => [
      ...(['L', 'R', 'X'] as const).map((part) => bagNumber(desk, each, part)),
      sampleNumber(desk, each, 'H'),
    ])
    const twice = serials.map((each) => kitNumber(desk, each))
    expect([...seen.keys()].toSorted()).toEqual([...once, ...twice].toSorted())
    expect(once.filter((number) => seen.get(number) !== 1)).toEqual([])
    expect(twice.filter((number) => seen.get(number) !== 2)).toEqual([])
  },
  240_000,
)
