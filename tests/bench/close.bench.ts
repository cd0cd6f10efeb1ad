/** The close of day: a thousand animals reconciled, and two hundred practice days explained. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openLog } from '../../db/log/open.ts'
import { found, offByCount, offByPlanted, planted, playToClose } from '../practice/faults.ts'
import { countEverything } from '../support/close.ts'
import { openStation, type TestDesk } from '../support/desk.ts'
import { fillWithFinished } from './long-log.ts'
import { alone, type Figure, ms } from './measure.ts'

const animals = 1000

async function dayOf(desk: TestDesk, sampler: Parameters<typeof fillWithFinished>[1]['sampler']) {
  const log = openLog(desk.file)
  if (!log.ok) throw new Error(log.refusal.say)
  fillWithFinished(log.value, { desk: log.value.desk, animals, sampler, now: desk.now })
  log.value.close()
  // Everything is off by one, so that every rule of causes has something to look for.
  await countEverything(desk, {
    animals: -1,
    'kits-in-stock': -1,
    'blank-labels': -1,
    'unused-kit-labels': 1,
  })
}

async function reconcileFigure(): Promise<Figure> {
  const { desk, crew } = await openStation({ kits: 3000, blankLabels: 20_000 })
  const to = { in: 'hands', person: crew.sampler } as const
  await desk.ask('kits.move', { from: { in: 'stock' }, to, count: 1200, reason: '' })
  await dayOf(desk, crew.sampler)
  const query = () => desk.desk.call(desk.session, 'close', {})
  await alone(5, query)
  const { p50, p95 } = await alone(50, query)
  await desk.end()
  return {
    what: `reconciling a day of ${animals.toLocaleString('en')} animals, every count off, with the causes looked for (p95)`,
    figure: `${ms(p95)} (p50 ${ms(p50)})`,
    target: 'under 100 ms',
    met: p95 < 100,
  }
}

/** Whether a day's close names just what was planted in it. */
async function isExplained(folder: string, seed: number): Promise<{ faults: number; ok: boolean }> {
  const { script, close } = await playToClose(folder, { seed, animals: 24 })
  const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b)
  const sorted = (off: Record<string, number>) =>
    Object.entries(off).toSorted(([a], [b]) => (a < b ? -1 : 1))
  const ok =
    same(found(close), planted(script)) &&
    same(sorted(offByCount(close)), sorted(offByPlanted(script)))
  return { faults: script.faults.length, ok }
}

const days = 200

async function explainedFigure(): Promise<Figure> {
  let [explained, faults] = [0, 0]
  const failed: number[] = []
  for (let seed = 1; seed <= days; seed += 1) {
    const folder = mkdtempSync(join(tmpdir(), 'duskline-close-'))
    const day = await isExplained(folder, seed)
    rmSync(folder, { recursive: true, force: true })
    faults += day.faults
    if (day.ok) explained += 1
    else failed.push(seed)
  }
  const which = failed.length === 0 ? '' : `; not days ${failed.join(', ')}`
  return {
    what: `practice days on which the close names each planted fault, and no other`,
    figure: `${explained} of ${days} days, ${faults} faults planted${which}`,
    target: `all ${days}`,
    met: explained === days,
  }
}

export async function closeFigures(): Promise<Figure[]> {
  return [await reconcileFigure(), await explainedFigure()]
}
