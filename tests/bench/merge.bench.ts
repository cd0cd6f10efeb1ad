/** Merging a season's files: against the plainest copy, against two general libraries, and what it leaves. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { availableParallelism, tmpdir } from 'node:os'
import { join } from 'node:path'
import { monitorEventLoopDelay } from 'node:perf_hooks'
import * as Automerge from '@automerge/automerge'
import * as Y from 'yjs'
import { connectionOf } from '../../db/connection.ts'
import { createLog } from '../../db/log/create.ts'
import { openLog } from '../../db/log/open.ts'
import { readLog } from '../../db/log/read-log.ts'
import { mergeLogs } from '../../db/merge/merge.ts'
import { animalsBeginning } from '../../db/read/find.ts'
import { discrepanciesFound } from '../../electron/desk/discrepancy-search.ts'
import { DeskId, personId } from '../../shared-types/sample-number.ts'
import { fillWithFinished } from './long-log.ts'
import { alone, type Figure, ms } from './measure.ts'

/** An animal leaves twelve entries behind in these logs. */
const entriesPerAnimal = 12
const letters = 'ACDEFHJKMNPQRTVWXY'

/** One file a desk, a station every other letter. */
function makeLog(folder: string, at: number, entries: number): string {
  const station = `${letters[Math.floor(at / letters.length)]}${letters[at % letters.length]}K`
  const desk = DeskId.parse(`26${station}A`)
  const path = join(folder, `${desk}.stationlog`)
  const log = createLog(path, desk)
  if (!log.ok) throw new Error(log.refusal.say)
  fillWithFinished(log.value, {
    desk,
    animals: Math.ceil(entries / entriesPerAnimal),
    sampler: personId(desk, 1),
    now: Date.UTC(2026, 10, 14, 13) + at,
  })
  log.value.close()
  return path
}

interface Once {
  readonly ms: number
  /** Of the processor, all threads together: it says more than the clock where others use the machine. */
  readonly cpu: number
  readonly megabytes: number
}

const once = new URL('merge-once.ts', import.meta.url).pathname

function merge(how: 'ours' | 'attach', folder: string, files: readonly string[]): Once {
  const out = join(folder, `merged-${how}`)
  for (const part of ['', '-wal', '-shm']) rmSync(out + part, { force: true })
  return JSON.parse(
    execFileSync(process.execPath, [once, how, out, ...files], { encoding: 'utf8' }),
  ) as Once
}

function attachFigures(folder: string, files: readonly string[]): Figure[] {
  const sizes = [1 / 8, 1 / 4, 1 / 2, 1].map((share) => Math.max(1, files.length * share))
  const runs = sizes.map((count) => {
    const some = files.slice(0, count)
    return { count, baseline: merge('attach', folder, some), ours: merge('ours', folder, some) }
  })
  const all = runs.at(-1)
  if (!all) return []
  const ratio = all.ours.ms / all.baseline.ms
  const work = all.ours.cpu / all.baseline.cpu
  return [
    {
      what: `merging ${all.count} files, verified and with read tables, against ATTACH and INSERT OR IGNORE ... SELECT of the same rows, in ${availableParallelism()} threads`,
      figure: `${ratio.toFixed(2)}x (${ms(all.ours.ms)} against ${ms(all.baseline.ms)}; of the processor ${work.toFixed(2)}x, ${ms(all.ours.cpu)} against ${ms(all.baseline.cpu)})`,
      target: 'at most 3x',
      met: ratio <= 3,
    },
    {
      what: 'the same by number of files: time a file, and peak of memory',
      figure: runs
        .map(
          ({ count, ours }) => `${count}: ${ms(ours.ms / count)}, ${ours.megabytes.toFixed(0)} MB`,
        )
        .join('; '),
      target: 'linear, memory bounded: reported',
      met: null,
    },
  ]
}

type Facts = Record<string, string>

/** The entries of a log as general libraries take them: a map from its identity to what it says. */
function factsOf(path: string): Facts {
  const log = readLog(path)
  if (!log.ok) throw new Error(log.refusal.say)
  const rows = connectionOf(log.value)
    .prepare<[], { desk: string; seq: number; hash: string; body: string }>(
      'SELECT desk, seq, hash, body FROM entry',
    )
    .all()
  log.value.close()
  return Object.fromEntries(
    rows.map(({ desk, seq, hash, body }) => [`${desk} ${seq} ${hash}`, body]),
  )
}

function automergeDocument(facts: Facts): Uint8Array {
  return Automerge.save(Automerge.from<Facts>(facts))
}

function mergeWithAutomerge(documents: readonly Uint8Array[]): number {
  const merged = documents
    .map((bytes) => Automerge.load<Facts>(bytes))
    .reduce((all, each) => Automerge.merge(all, each), Automerge.init<Facts>())
  Automerge.save(merged)
  return Object.keys(merged).length
}

function yjsDocument(facts: Facts): Uint8Array {
  const document = new Y.Doc()
  document.transact(() => {
    for (const [key, body] of Object.entries(facts)) document.getMap('facts').set(key, body)
  })
  return Y.encodeStateAsUpdate(document)
}

function mergeWithYjs(documents: readonly Uint8Array[]): number {
  const merged = new Y.Doc()
  for (const bytes of documents) Y.applyUpdate(merged, bytes)
  Y.encodeStateAsUpdate(merged)
  return merged.getMap('facts').size
}

async function libraryFigures(folder: string): Promise<Figure[]> {
  const files = Array.from({ length: 4 }, (_, at) => makeLog(folder, 100 + at, 5000))
  const facts = files.map(factsOf)
  const count = facts.reduce((all, each) => all + Object.keys(each).length, 0)
  const ours = await alone(3, (run) => {
    const merged = mergeLogs({ out: join(folder, `small-${run}`), files, office: null })
    if (!merged.ok || merged.value.entries !== count) throw new Error('not all came in')
  })
  const documents = { Automerge: facts.map(automergeDocument), Yjs: facts.map(yjsDocument) }
  const reached = { Automerge: mergeWithAutomerge, Yjs: mergeWithYjs }
  const figures: Figure[] = []
  for (const name of ['Automerge', 'Yjs'] as const) {
    const theirs = await alone(3, () => {
      if (reached[name](documents[name]) !== count) throw new Error(`${name} reached another set`)
    })
    figures.push({
      what: `merging ${count.toLocaleString('en')} entries of 4 files, against ${name} merging the same facts as maps (p50)`,
      figure: `${(theirs.p50 / ours.p50).toFixed(2)}x as fast (${ms(ours.p50)} against ${ms(theirs.p50)})`,
      target: 'ahead of it',
      met: theirs.p50 > ours.p50,
    })
  }
  return figures
}

/** The merged season opened and searched, as the office does all week. */
async function seasonFigures(folder: string): Promise<Figure[]> {
  const path = join(folder, 'merged-ours')
  const open = await alone(3, () => {
    const log = openLog(path)
    if (log.ok) log.value.close()
  })
  const log = openLog(path)
  if (!log.ok) throw new Error(log.refusal.say)
  const animals = connectionOf(log.value)
    .prepare<[], number>('SELECT count(*) FROM animal')
    .pluck()
    .get()
  const find = await alone(200, (run) =>
    animalsBeginning(log.value, `T2${String(run % 100).padStart(2, '0')}`),
  )
  const blocked = monitorEventLoopDelay({ resolution: 5 })
  blocked.enable()
  const search = await alone(1, () => discrepanciesFound(log.value))
  blocked.disable()
  log.value.close()
  return [
    {
      what: 'the desk held up while the merged season is looked through for discrepancies',
      figure: `${ms(blocked.max / 1e6)} at the longest, of ${ms(search.p50)} in all`,
      target: 'no scan waits: under 500 ms',
      met: blocked.max / 1e6 < 500,
    },
    {
      what: `opening the merged season of ${animals?.toLocaleString('en')} animals (p50)`,
      figure: ms(open.p50),
      target: 'under 2000 ms',
      met: open.p50 < 2000,
    },
    {
      what: 'an animal of the season found as its tag is typed (p95)',
      figure: ms(find.p95),
      target: 'under 50 ms',
      met: find.p95 < 50,
    },
  ]
}

/** As many files, of as many entries each, as a season's weekend has. */
export async function mergeFigures(of = { files: 64, entries: 20_000 }): Promise<Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'duskline-bench-merge-'))
  try {
    const files = Array.from({ length: of.files }, (_, at) => makeLog(folder, at, of.entries))
    const figures = attachFigures(folder, files)
    return [...figures, ...(await seasonFigures(folder)), ...(await libraryFigures(folder))]
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
