/** Plays a practice day at a desk of its own, on a clock that runs as fast as the desk answers. */
import { basename, join } from 'node:path'
import type { CallOutput } from '../../../shared-types/desk-api.ts'
import { granted, type Result } from '../../../shared-types/result.ts'
import type { PersonId } from '../../../shared-types/sample-number.ts'
import { saltsOf } from '../../station/practice/plan.ts'
import type { DeskScript, PracticeStep } from '../../station/practice/script.ts'
import type { DeskDeps } from '../call.ts'
import type { Desk } from '../desk.ts'
import type { Session } from '../session.ts'

export interface Stage {
  /** The folder in which the log is made. */
  readonly folder: string
  readonly createDesk: (deps: DeskDeps) => Desk
  /** Handed what the close shows at dusk, once everything is counted and nothing is settled. */
  readonly looked?: (close: CallOutput<'close'>) => void
  /** Told after every step. */
  readonly progress?: (done: number, total: number) => void
}

/** Each person at a window of their own. */
class Windows {
  readonly #desk: Desk
  readonly #sessions = new Map<PersonId, Session>()

  constructor(desk: Desk) {
    this.#desk = desk
  }

  of(person: PersonId): Session {
    const session = this.#sessions.get(person) ?? this.#desk.openSession()
    this.#sessions.set(person, session)
    return session
  }
}

/**
 * Plays every step at its minute; answers with the path of the log, which is then closed. What it makes
 * is marked as practice for ever. Refuses as the desk does: a full disk, a log that is already there.
 */
export async function playScript(script: DeskScript, stage: Stage): Promise<Result<string>> {
  const clock = { now: 0 }
  const salts = saltsOf(script)
  const desk = stage.createDesk({
    folder: stage.folder,
    now: () => clock.now,
    randomBytes: (count) => salts.bytes(count),
    zone: script.zone,
    practice: true,
  })
  try {
    return await play(script, desk, clock, stage)
  } finally {
    await desk.close()
  }
}

async function play(
  { steps }: DeskScript,
  desk: Desk,
  clock: { now: number },
  { folder, progress, looked }: Stage,
): Promise<Result<string>> {
  const windows = new Windows(desk)
  for (const [done, step] of steps.entries()) {
    clock.now = step.atMs
    const result = await playStep(desk, windows.of(step.by), step, looked)
    if (!result.ok) return result
    progress?.(done + 1, steps.length)
  }
  const shelf = await desk.call(desk.openSession(), 'shelf.look', {})
  return shelf.ok ? granted(join(folder, basename(shelf.value.open ?? ''))) : shelf
}

async function playStep(
  desk: Desk,
  session: Session,
  step: PracticeStep,
  looked: Stage['looked'],
): Promise<Result<unknown>> {
  switch (step.is) {
    case 'told': {
      const told = await desk.call(session, step.name, step.input)
      return told.ok || !step.perhaps ? told : granted(null)
    }
    case 'blanks-counted':
      return countBlanks(desk, session, step.off)
    case 'looked-over':
      return lookOver(desk, session, looked)
    case 'suggestion-set-aside':
      return setSuggestionAside(desk, session)
  }
}

async function countBlanks(desk: Desk, session: Session, off: number): Promise<Result<unknown>> {
  const kits = await desk.call(session, 'kits', {})
  if (!kits.ok) return kits
  const counted = kits.value.labels.blanks + off
  return desk.call(session, 'count.enter', { item: { of: 'blank-labels' }, counted })
}

async function setSuggestionAside(desk: Desk, session: Session): Promise<Result<unknown>> {
  const forecast = await desk.call(session, 'forecast', {})
  if (!forecast.ok) return forecast
  const [first] = forecast.value.suggestions
  if (!first) return granted(null)
  const { animal, sampler } = first
  return desk.call(session, 'suggestion.setAside', { animal, sampler })
}

async function lookOver(
  desk: Desk,
  session: Session,
  looked: Stage['looked'],
): Promise<Result<unknown>> {
  const close = await desk.call(session, 'close', {})
  if (close.ok) looked?.(close.value)
  return close
}
