/** Practice days on which every hunter is told a wait: how well what was told held. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createDesk, type Desk } from '../../electron/desk/desk.ts'
import type { DeskDeps } from '../../electron/desk/call.ts'
import { playScript } from '../../electron/desk/practice/player.ts'
import { dayPosts } from '../../electron/station/practice/crew.ts'
import { practiceDay } from '../../electron/station/practice/plan.ts'
import { type DayShape, openingDay } from '../../electron/station/practice/shapes.ts'
import { practicePin } from '../../electron/station/practice/station-facts.ts'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import { type PersonId, personId } from '../../shared-types/sample-number.ts'
import type { Result } from '../../shared-types/result.ts'

type Forecast = CallOutput<'forecast'>

/** Samplers for more animals than come: hardly anyone waits. */
export const calmDay: DayShape = { ...openingDay, posts: (animals) => dayPosts(animals * 1.4) }
/** Samplers for far fewer than come: at dusk the line is over an hour long. */
export const swampedDay: DayShape = { ...openingDay, posts: (animals) => dayPosts(animals * 0.6) }

export interface DayHeld {
  readonly held: Forecast['held']
  /** Median minutes waited. */
  readonly usualWait: number
  readonly longestTold: number
}

interface Told {
  longest: number
  usualWait: number
  forecast?: Forecast
}

/** A desk that tells each hunter the wait right after check-in, as a volunteer would. */
function tellingDesk(deps: DeskDeps, lead: PersonId, told: Told): Desk {
  const desk = createDesk(deps)
  const call = desk.call.bind(desk) as (...given: unknown[]) => Promise<Result<unknown>>
  const close = desk.close.bind(desk)
  const signedIn = new Map<unknown, unknown>()
  const tell = async (session: unknown, checkedIn: CallOutput<'animal.checkIn'>) => {
    if (checkedIn.noSample !== null) return
    const answer = await call(session, 'wait.tell', { animal: checkedIn.animal })
    if (!answer.ok) return
    const { highMinutes } = answer.value as CallOutput<'wait.tell'>
    told.longest = Math.max(told.longest, highMinutes)
  }
  desk.call = (async (session: unknown, name: string, input: unknown) => {
    if (name === 'person.signIn') signedIn.set(session, input)
    const first = await call(session, name, input)
    const isLocked = !first.ok && first.refusal.code === 'sign-in-first'
    // A window left alone locks by itself; whoever comes back to it types their PIN.
    if (isLocked) await call(session, 'person.signIn', signedIn.get(session))
    const answer = isLocked ? await call(session, name, input) : first
    if (name === 'animal.checkIn' && answer.ok)
      await tell(session, answer.value as CallOutput<'animal.checkIn'>)
    return answer
  }) as Desk['call']
  desk.close = async () => {
    const session = desk.openSession()
    await call(session, 'person.signIn', { person: lead, pin: practicePin })
    const [forecast, line] = [await call(session, 'forecast', {}), await call(session, 'line', {})]
    if (!forecast.ok || !line.ok) throw new Error('the day cannot be looked back at')
    told.forecast = forecast.value as Forecast
    told.usualWait = (line.value as CallOutput<'line'>).waits.medianMinutes ?? 0
    await close()
  }
  return desk
}

/** Plays a practice day and answers with how the waits told held. */
export async function heldOnDay(
  wish: { seed: number; animals: number },
  shape: DayShape,
): Promise<DayHeld> {
  const folder = mkdtempSync(join(tmpdir(), 'duskline-waits-'))
  try {
    const [script] = practiceDay({ ...wish, desks: 1 }, shape)
    if (!script) throw new Error('no desk was made up')
    const told: Told = { longest: 0, usualWait: 0 }
    const createTelling = (deps: DeskDeps) => tellingDesk(deps, personId(script.desk, 1), told)
    const played = await playScript(script, { folder, createDesk: createTelling })
    if (!played.ok) throw new Error(played.refusal.say)
    if (!told.forecast) throw new Error('no forecast was given')
    return {
      held: told.forecast.held,
      usualWait: told.usualWait,
      longestTold: told.longest,
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
