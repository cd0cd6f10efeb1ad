/** A morning's labels: laid out and written to one PDF, and what that takes of memory. */
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { layKitLabels } from '../../electron/print/kit-labels.ts'
import { someOfRun, writeLabels } from '../../electron/print/label-run.ts'
import { commonStocks } from '../../shared-types/common-stocks.ts'
import { batch, reservedKit } from '../print/samples.ts'
import { alone, type Figure, ms } from './measure.ts'

const labels = 1200
const roll = commonStocks['roll-51x25']

/** A PDF of so many labels, kits being numbered from a serial on. */
async function print(from: number, count: number): Promise<Uint8Array> {
  const perKit = 10
  const kits = Array.from({ length: Math.ceil(count / perKit) }, (_, place) =>
    reservedKit(from + place),
  )
  const run = layKitLabels(kits, roll, batch)
  if (!run.ok) throw new Error(run.refusal.say)
  const places = Array.from({ length: count }, (_, place) => place)
  return writeLabels(someOfRun(run.value, places))
}

setFlagsFromString('--expose-gc')
const collect = runInNewContext('gc') as () => void

/** Milliseconds of processor time: what it takes on a machine that does nothing else, in one thread. */
async function processorMs(work: () => Promise<unknown>): Promise<number> {
  const before = process.cpuUsage()
  await work()
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1000
}

/** Megabytes in use once what is not needed any more is given back. */
function inUse(): number {
  collect()
  return process.memoryUsage().heapUsed / 1e6
}

export async function labelFigures(): Promise<Figure[]> {
  await print(1, labels)
  const before = inUse()
  const rounds = 5
  let serial = 200
  const { p50, p95 } = await alone(rounds, () => print((serial += 200), labels))
  const grown = inUse() - before
  const busy: number[] = []
  for (let round = 0; round < rounds; round += 1)
    busy.push(await processorMs(() => print((serial += 200), labels)))
  const median = busy.toSorted((a, b) => a - b)[Math.floor(rounds / 2)] ?? Number.NaN
  const { p50: tenth } = await alone(rounds, () => print((serial += 20), labels / 10))
  return [
    {
      what: `${labels.toLocaleString('en')} labels laid out and written to one PDF (p95)`,
      figure: `${ms(p95)} (p50 ${ms(p50)}, ${(p50 / tenth).toFixed(1)} times that of a tenth); ${ms(median)} of processor time`,
      target: 'under 2,000 ms of processor time',
      met: median < 2000,
    },
    {
      what: `memory kept after ${(rounds * labels).toLocaleString('en')} more labels`,
      figure: `${grown.toFixed(1)} MB`,
      target: 'flat: under 20 MB',
      met: grown < 20,
    },
  ]
}
