/**
 * Printed labels as other people's programs see them: drawn by poppler, read by zbar and libdmtx.
 * None of them shares code with what drew the barcodes. Left out, by name, where not installed.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { printKitLabels } from '../../electron/print/kit-labels.ts'
import { commonStocks } from '../../shared-types/common-stocks.ts'
import { bagNumber, kitNumber, sampleNumber } from '../../shared-types/sample-number.ts'
import { batch, desk, reservedKit } from '../print/samples.ts'

function installed(program: string): boolean {
  return spawnSync(program, ['-V']).error === undefined
}

function run(program: string, args: readonly string[]): string {
  const { stdout, stderr, error } = spawnSync(program, args, { encoding: 'utf8' })
  if (error) throw new Error(`${program}: ${stderr}`)
  return stdout
}

const folder = mkdtempSync(join(tmpdir(), 'labels-'))
afterAll(() => rmSync(folder, { recursive: true }))

const serials = [1, 42, 777, 9999]
const numbers = serials.flatMap((serial) => [
  ...(['L', 'R', 'X'] as const).map((part) => bagNumber(desk, serial, part)),
  kitNumber(desk, serial),
  sampleNumber(desk, serial, 'H'),
])
const bags = numbers.filter((number) => 'LRX'.includes(number.charAt(10)))

beforeAll(async () => {
  for (const name of ['roll-51x25', 'sheet-a4', 'sheet-letter'] as const) {
    const pdf = await printKitLabels(serials.map(reservedKit), commonStocks[name], batch)
    if (!pdf.ok) throw new Error(pdf.refusal.say)
    writeFileSync(join(folder, `${name}.pdf`), pdf.value)
  }
})

/** Pages drawn by poppler; `mono` is what a thermal print head does: each dot burns or does not. */
function drawn(stock: string, dpi: number, look: 'gray' | 'mono'): string[] {
  const prefix = `${stock}-${dpi}-${look}`
  const args = ['-r', String(dpi), look === 'mono' ? '-mono' : '-gray']
  run('pdftoppm', [...args, join(folder, `${stock}.pdf`), join(folder, prefix)])
  const pages = readdirSync(folder).filter((file) => file.startsWith(`${prefix}-`))
  return pages.map((file) => join(folder, file))
}

const poppler = installed('pdftoppm')

describe.each([
  ['roll-51x25', 203, 'gray'],
  ['roll-51x25', 203, 'mono'],
  ['sheet-a4', 300, 'mono'],
  ['sheet-letter', 300, 'mono'],
] as const)('the labels of %s at %i dpi in %s', (stock, dpi, look) => {
  test.skipIf(!poppler || !installed('zbarimg'))('zbarimg reads every Code 128', () => {
    const args = ['-q', '--raw', '-Sdisable', '-Scode128.enable']
    const read = run('zbarimg', [...args, ...drawn(stock, dpi, look)])
    expect(read.trim().split('\n').toSorted()).toEqual(numbers.toSorted())
  })
})

test.skipIf(!poppler || !installed('dmtxread'))(
  'dmtxread reads every Data Matrix of the roll',
  () => {
    const read = drawn('roll-51x25', 203, 'mono').map((page) =>
      run('dmtxread', ['-N', '1', '-x', '75%', '-Y', '100%', '-y', '55%', '-m', '1000', page]),
    )
    expect(read.filter(Boolean).toSorted()).toEqual(bags.toSorted())
  },
  60_000,
)
