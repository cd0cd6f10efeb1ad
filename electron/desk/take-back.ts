/** Taking a slip back: the last action of whoever sits at the window, while it is a minute old. */
import type { ReadableLog } from '../../db/connection.ts'
import { understood } from '../../db/fold/fold.ts'
import { coolerOf } from '../../db/read/coolers.ts'
import { kitBalance } from '../../db/read/kits.ts'
import { entriesAbout, latestEntriesBy } from '../../db/read/story.ts'
import type { Entry, KnownEntry } from '../../shared-types/entry.ts'
import { granted } from '../../shared-types/result.ts'
import type { PersonId } from '../../shared-types/sample-number.ts'
import type { StationRecord } from '../../shared-types/station.ts'
import { decideTakeBack, type TakeBackView } from '../station/take-back.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { namesOf } from './names.ts'

function known(entries: readonly Entry[]): KnownEntry[] {
  return entries.flatMap((entry) => understood(entry) ?? [])
}

function viewOf(
  log: ReadableLog,
  { settings }: StationRecord,
  person: PersonId,
  now: number,
): TakeBackView {
  return {
    now,
    settings,
    mine: known(latestEntriesBy(log, person)),
    about: (number) => known(entriesAbout(log, [number])),
    coolerOf: (cooler) => coolerOf(log, cooler),
    kitsAt: (account) => kitBalance(log, account),
    nameOf: namesOf(log),
  }
}

export const takeBackQueries = {
  slip: ({ log, station, person, now }) => {
    if (!person) return granted({ slip: null })
    const back = decideTakeBack(viewOf(log, station, person.person, now))
    if (!back.ok) return granted({ slip: null })
    const { say, untilMs } = back.value
    return granted({ slip: { say, untilMs } })
  },
} satisfies Partial<QueryHandlers>

export const takeBackCommands = {
  'slip.takeBack': ({ act, by, station, now }) =>
    act((tx) => {
      const back = decideTakeBack(viewOf(tx, station, by.person, now))
      if (!back.ok) return back
      return granted({ drafts: back.value.drafts, value: { say: back.value.say } })
    }),
} satisfies Partial<CommandHandlers>
