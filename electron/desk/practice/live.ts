/** A live practice morning at the open log: its clock, its simulated crew, what the learner sees. */
import type { WritableLog } from '../../../db/connection.ts'
import { understood } from '../../../db/fold/fold.ts'
import { entriesInOrder, entriesOfKind } from '../../../db/log/read-entries.ts'
import { allAnimals } from '../../../db/read/animals.ts'
import { bagsOnBench, tissuesOf } from '../../../db/read/bags.ts'
import { coolers } from '../../../db/read/coolers.ts'
import { kitBalance, kitsOfAnimal, reservedKits } from '../../../db/read/kits.ts'
import { people } from '../../../db/read/people.ts'
import { stationOf } from '../../../db/read/station.ts'
import type { CommandName } from '../../../shared-types/desk-api.ts'
import type { PracticeSpeed } from '../../../shared-types/practice.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'
import type { LivePracticeView, ScoreView } from '../../../shared-types/views/practice.ts'
import { atSpeed, type PracticeClock, practiceTime } from '../../station/practice/live/clock.ts'
import { CrewWork } from '../../station/practice/live/crew-work.ts'
import { sceneOf } from '../../station/practice/live/scene.ts'
import { scoreOf, type Slip } from '../../station/practice/live/score.ts'
import type { Deed, Seen } from '../../station/practice/live/seen.ts'
import type { LiveStage } from '../../station/practice/live/stage.ts'
import { sayEntry } from '../../station/story.ts'
import { kitAt } from '../animals.ts'
import { namesOf } from '../names.ts'
import type { Session } from '../session.ts'

/** How often the crew looks up, in real milliseconds. */
export const lookUpMs = 500

export interface LiveDeps {
  /** The laptop's clock. */
  readonly now: () => number
  /** Runs something over and over; answers with how to stop. */
  readonly every: (ms: number, run: () => void) => () => void
  readonly call: (session: Session, name: CommandName, input: unknown) => Promise<Result<unknown>>
  readonly openSession: () => Session
  readonly closeSession: (session: Session) => void
  /** Tells the windows that there is something new to see. */
  readonly onNews: (isClockChanged: boolean) => void
}

interface Run {
  readonly stage: LiveStage
  readonly log: WritableLog
  readonly work: CrewWork
  /** The window at which the simulated crew works, one after another. */
  readonly seat: Session
  readonly slips: Slip[]
  readonly stop: () => void
  clock: PracticeClock
  isOver: boolean
  isLooking: boolean
}

export class LivePractice {
  readonly #deps: LiveDeps
  #run: Run | null = null

  constructor(deps: LiveDeps) {
    this.#deps = deps
  }

  /** What the desk's clock reads: the practice clock while such a morning runs, else the laptop's own. */
  now(): number {
    const realMs = this.#deps.now()
    return this.#run ? practiceTime(this.#run.clock, realMs) : realMs
  }

  /** Begins in a log just opened, which must be one marked as practice. */
  begin(stage: LiveStage, log: WritableLog, speed: PracticeSpeed): void {
    this.stop()
    if (stationOf(log)?.practice !== true) throw new Error('a real log is no place to practise')
    const realMs = this.#deps.now()
    this.#run = {
      stage,
      log,
      work: new CrewWork(stage),
      seat: this.#deps.openSession(),
      slips: [],
      stop: this.#deps.every(lookUpMs, () => void this.lookUp()),
      clock: { realMs, practiceMs: stage.startMs, speed },
      isOver: false,
      isLooking: false,
    }
  }

  /** Ends when another log is open than the one it runs in, or none. */
  keepTo(log: WritableLog | null): void {
    if (this.#run && this.#run.log !== log) this.stop()
  }

  stop(): void {
    if (!this.#run) return
    this.#run.stop()
    this.#deps.closeSession(this.#run.seat)
    this.#run = null
  }

  /** Whether it is the simulated crew that acts: what they print needs no paper. */
  isCrew(session: Session): boolean {
    return this.#run?.seat === session
  }

  pace(speed: PracticeSpeed): Result<Record<string, never>> {
    const run = this.#run
    if (!run || run.isOver) return notLive()
    run.clock = atSpeed(run.clock, this.#deps.now(), speed)
    this.#deps.onNews(true)
    return granted({})
  }

  /** The crew goes home; the clock stands, and the score is what it is. */
  end(): Result<Record<string, never>> {
    const paced = this.pace(0)
    if (paced.ok && this.#run) {
      this.#run.isOver = true
      this.#deps.onNews(false)
    }
    return paced
  }

  /** Takes note of what the desk refused the learner. */
  noteRefused(session: Session, { code, say }: { code: string; say: string }): void {
    const run = this.#run
    if (!run || run.isOver || session === run.seat || session.person !== run.stage.cast.trainee)
      return
    run.slips.push({ atMs: this.now(), code, say })
  }

  /** One look up of the whole crew. */
  async lookUp(): Promise<void> {
    const run = this.#run
    if (!run || run.isOver || run.isLooking || run.clock.speed === 0) return
    run.isLooking = true
    try {
      for (const deed of run.work.step(seenIn(run.log, this.now()))) await this.#do(run, deed)
      if (this.now() >= run.stage.endMs) this.end()
      this.#deps.onNews(false)
    } finally {
      run.isLooking = false
    }
  }

  async #do(run: Run, deed: Deed): Promise<void> {
    if (this.#run !== run) return
    run.seat.person = deed.by
    const done = await this.#deps.call(run.seat, deed.name, deed.input)
    if (!done.ok) run.work.refused(deed)
  }

  view(): LivePracticeView | null {
    const run = this.#run
    if (!run) return null
    const { stage, log, clock, isOver } = run
    const nowMs = this.now()
    const minutes = (ms: number) => Math.floor((ms - stage.startMs) / 60_000)
    const scene = sceneOf(stage, seenIn(log, nowMs), (animal, site) => looksAt(log, animal, site))
    return {
      role: stage.role,
      trainee: stage.cast.trainee,
      speed: clock.speed,
      minute: minutes(nowMs),
      minutes: minutes(stage.endMs),
      animals: stage.guests.length,
      isOver,
      ...scene,
    }
  }

  score(): Result<ScoreView> {
    const run = this.#run
    if (!run) return notLive()
    const { stage, log, slips } = run
    const nameOf = namesOf(log)
    const entries = knownEntries(log).filter(({ at }) => at.wall >= stage.startMs)
    return granted(
      scoreOf({
        stage,
        slips,
        nowMs: this.now(),
        targetWaitMinutes: stationOf(log)?.settings.targetWaitMinutes ?? 30,
        animals: allAnimals(log),
        entries: entries.map((entry) => ({ entry, say: sayEntry(entry, nameOf) })),
      }),
    )
  }
}

function notLive(): Result<never> {
  return refused(
    'not-practising',
    'No live practice runs at this desk.',
    'Begin one where the logs are chosen: lock, put the log away, practise.',
  )
}

function knownEntries(log: WritableLog) {
  return [...entriesInOrder(log)].flatMap((entry) => understood(entry) ?? [])
}

function looksAt(log: WritableLog, animal: string, site: string): number {
  const looks = [...entriesOfKind(log, 'tissue.checked')]
  return looks.filter(({ body }) => body.animal === animal && body.site === site).length
}

function seenIn(log: WritableLog, nowMs: number): Seen {
  return {
    nowMs,
    animals: allAnimals(log),
    tissuesOf: (animal) => tissuesOf(log, animal),
    kitOf: (animal) => {
      const kit = kitAt(kitsOfAnimal(log, animal))
      return kit && { kit: kit.kit, isOpen: kit.state === 'opened' }
    },
    reserved: reservedKits(log)
      .filter(({ animal }) => animal === null)
      .map(({ kit }) => kit),
    kitsAt: (account) => kitBalance(log, account),
    crew: people(log),
    bench: bagsOnBench(log).map(({ bag, species }) => ({ bag, isElk: species === 'elk' })),
    coolers: coolers(log),
  }
}
