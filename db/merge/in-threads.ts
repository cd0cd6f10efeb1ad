/**
 * Merging in several threads: each makes parts of the files that belong together, one puts the parts
 * together as they come. Files belong together that hold the same desks, or desks whose entries meet in a
 * row of a read table; which do is guessed at first, by station, and known once the parts are made: a
 * wrong guess costs time and changes nothing.
 */
import { existsSync, readdirSync, rmSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { basename, dirname, join } from 'node:path'
import { granted, type Result } from '../../shared-types/result.ts'
import { glanceAt } from '../log/glance.ts'
import type { Gathered } from './gather.ts'
import type { Group } from './group.ts'
import { joinedGroups } from './groups.ts'
import type { MergeOrder } from './merge.ts'
import { mixedWithPractice, nothingToMerge } from './merge-refusals.ts'
import type { MergeHand, MergeHandData } from './merge-tasks.ts'
import { MergeThread } from './merge-thread.ts'
import { type FileReport, type MergeProgress, type MergeReport, sums } from './report.ts'

export interface MergeWatch {
  readonly progress: (step: MergeProgress) => void
  /** Its first number is set to 1 to stop the merge. */
  readonly stop: Int32Array
}

/** Files that belong together, as far as is guessed or known. */
export function guessedGroups(files: readonly string[]): number[][] {
  return [
    ...Map.groupBy(files.keys(), (place) => {
      const path = files[place] ?? ''
      return glanceAt(path)?.desk.slice(0, 5) ?? path
    }).values(),
  ]
}

/**
 * Merges files into a log that is not there yet. Refuses as `mergeLogs` does; `groups` are places in
 * `files`. Throws where a thread meets a fault of its own; `out` is then as it was.
 */
export async function mergeInThreads(
  order: MergeOrder,
  groups: readonly (readonly number[])[],
  watch: MergeWatch,
  startHand: (data: MergeHandData) => MergeHand = (data) => new MergeThread(data),
): Promise<Result<MergeReport>> {
  const { out, office } = order
  clearAway(out)
  const start = () => startHand({ out, office, stop: watch.stop })
  const makers = Array.from({ length: Math.min(groups.length, availableParallelism()) }, start)
  const assembler = start()
  const merging = new Merging(order, makers, assembler, watch)
  try {
    return await merging.run(groups)
  } finally {
    await Promise.all([...makers, assembler].map((thread) => thread.end()))
    clearAway(out)
  }
}

/** A part that was made of the files at some places. */
interface Made {
  readonly places: readonly number[]
  readonly part: string
  readonly group: Group
}

type Groups = readonly (readonly number[])[]

class Merging {
  readonly #order: MergeOrder
  readonly #makers: readonly MergeHand[]
  readonly #assembler: MergeHand
  readonly #watch: MergeWatch
  readonly #made = new Map<string, Made>()
  readonly #met = new Map<number, Gathered>()
  readonly #shares = new Map<string, number>()
  #parts = 0

  constructor(
    order: MergeOrder,
    makers: readonly MergeHand[],
    assembler: MergeHand,
    watch: MergeWatch,
  ) {
    this.#order = order
    this.#makers = makers
    this.#assembler = assembler
    this.#watch = watch
  }

  async run(guessed: Groups): Promise<Result<MergeReport>> {
    const made = await this.#settled(guessed)
    if (!made.ok) return made
    const report = this.#report(made.value)
    if (report.files.every(({ state }) => state === 'refused')) return nothingToMerge(report.files)
    this.#watch.progress({ doing: 'finishing', file: null, done: 95, total: 100 })
    const finished = await this.#assembler.ask({ do: 'finish' })
    return finished.ok ? granted(report) : finished
  }

  /** Makes parts until none of them is tied to another. Those of the first guess are taken as they come. */
  async #settled(guessed: Groups): Promise<Result<Made[]>> {
    const first = await this.#make(guessed, true)
    if (!first.ok) return first
    let made = first.value
    for (let groups = this.#known(made); !isMadeOf(made, groups); groups = this.#known(made)) {
      const again = await this.#make(groups, false)
      if (!again.ok) return again
      made = again.value
    }
    if (made === first.value) return first
    const taken = await this.#assembler.ask({ do: 'take-anew', parts: partsOf(made) })
    return taken.ok ? granted(made) : taken
  }

  /** What belongs together, now that it is known. One real log among the files keeps practice out. */
  #known(made: readonly Made[]): number[][] {
    const isReal = [...this.#met.values()].some(({ practice }) => practice === false)
    const isKept = (place: number) => {
      const met = this.#met.get(place)
      return !isReal || met?.practice !== true || met.report.state === 'refused'
    }
    return joinedGroups(made)
      .map((places) => places.filter((place) => isKept(place) || this.#refuse(place)))
      .filter((places) => places.length > 0)
  }

  #refuse(place: number): false {
    const file = basename(this.#order.files[place] ?? '')
    const report: FileReport = { file, state: 'refused', refusal: mixedWithPractice(file) }
    this.#met.set(place, { report, practice: true })
    return false
  }

  /** Makes a part of each group that has none, on all threads. */
  async #make(groups: Groups, isTaken: boolean): Promise<Result<Made[]>> {
    const waiting = groups.filter((places) => !this.#made.has(places.join()))
    const takings: Promise<Result<void>>[] = []
    let refusal: Result<never> | null = null
    const work = async (maker: MergeHand) => {
      for (let places = waiting.pop(); places && refusal === null; places = waiting.pop()) {
        const made = await this.#makeOne(maker, places)
        if (!made.ok) refusal = made
        else if (isTaken && this.#standsApart(made.value)) takings.push(this.#take(made.value))
      }
    }
    await Promise.all(this.#makers.map(work))
    const taken = (await Promise.all(takings)).find(({ ok }) => !ok)
    if (refusal !== null) return refusal
    if (taken && !taken.ok) return taken
    return granted(groups.flatMap((places) => this.#made.get(places.join()) ?? []))
  }

  async #makeOne(maker: MergeHand, places: readonly number[]): Promise<Result<Made>> {
    this.#parts += 1
    const key = places.join()
    const files = places.map((place) => this.#order.files[place] ?? '')
    const out = `${this.#order.out}.${this.#parts}`
    const group = await maker.ask({ do: 'group', out, files }, (step) => this.#tell(places, step))
    if (!group.ok) return group
    for (const [at, place] of places.entries()) {
      const met = group.value.files[at]
      if (met && this.#met.get(place)?.report.state !== 'refused') this.#met.set(place, met)
    }
    const made = { places, part: `${out}.part`, group: group.value }
    this.#made.set(key, made)
    return granted(made)
  }

  readonly #apart: Made[] = []
  #taking: Promise<Result<void>> = Promise.resolve(granted(undefined))

  /** Whether nothing ties it to those before it: once one is tied, all are taken anew in the end. */
  #standsApart(made: Made): boolean {
    this.#apart.push(made)
    return joinedGroups(this.#apart).length === this.#apart.length
  }

  /** One after another, while the next parts are made. */
  #take({ part }: Made): Promise<Result<void>> {
    this.#taking = this.#taking.then((before) =>
      before.ok ? this.#assembler.ask({ do: 'take', parts: [part] }) : before,
    )
    return this.#taking
  }

  #tell(places: readonly number[], step: MergeProgress): void {
    this.#shares.set(places.join(), (step.done / step.total) * places.length)
    const done = [...this.#shares.values()].reduce((sum, share) => sum + share, 0)
    const total = this.#order.files.length
    const file = step.file ?? basename(this.#order.files[places[0] ?? 0] ?? '')
    this.#watch.progress({ doing: 'reading', file, done: Math.min(done, total) * 0.95, total })
  }

  #report(made: readonly Made[]): MergeReport {
    const files = this.#order.files.flatMap((_, place) => this.#met.get(place)?.report ?? [])
    const sum = (what: 'entries' | 'notUnderstood') =>
      made.reduce((all, { group }) => all + group[what], 0)
    const desks = made.reduce((all, { group }) => all + group.desks.length, 0)
    return { ...sums(files), entries: sum('entries'), desks, notUnderstood: sum('notUnderstood') }
  }
}

/** Removes the parts of a merge, also those that a program left behind which ended in the middle. */
function clearAway(out: string): void {
  if (!existsSync(dirname(out))) return
  const isPart = (name: string) =>
    name.startsWith(`${basename(out)}.`) && /^\.\d+\.part/.test(name.slice(basename(out).length))
  for (const name of readdirSync(dirname(out)).filter(isPart)) rmSync(join(dirname(out), name))
}

const partsOf = (made: readonly Made[]) => made.map(({ part }) => part)

function isMadeOf(made: readonly Made[], groups: Groups): boolean {
  const keys = new Set(made.map(({ places }) => places.join()))
  return keys.size === groups.length && groups.every((places) => keys.has(places.join()))
}
