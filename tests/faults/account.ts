/** What became of every acknowledged action: each must be in the log, once. */
import { understood } from '../../db/fold/fold.ts'
import { entriesInOrder } from '../../db/log/read-entries.ts'
import { readLog } from '../../db/log/read-log.ts'
import { verifyLog } from '../../db/log/verify.ts'
import type { Entry } from '../../shared-types/entry.ts'

export interface Account {
  readonly acknowledged: number
  readonly lost: number
  readonly twice: number
  /** In the log, though nobody was told yet: what was under way when the fault struck. */
  readonly unsaid: number
  /** The chain, the file and the tables are as they should be. */
  readonly whole: boolean
}

/** What a desk at work acknowledges, by what in the entry is its alone. */
function actionOf(entry: Entry): string[] {
  const number = numberOf(entry)
  return number === null ? [] : [`${entry.kind} ${number}`]
}

function numberOf(entry: Entry): string | null {
  const known = understood(entry)
  switch (known?.kind) {
    case 'station.set-up':
      return known.desk
    case 'animal.checked-in':
      return known.body.facts.tag
    case 'animal.assigned':
    case 'animal.finished':
      return known.body.animal
    case 'kit.numbered':
    case 'kit.opened':
      return known.body.kit
    case 'bag.sealed':
      return known.body.bag
    default:
      return null
  }
}

/** Holds a log against what people were told of it. A log that cannot be read has lost everything. */
export function accountFor(path: string, acknowledged: readonly string[]): Account {
  const read = readLog(path)
  if (!read.ok)
    return {
      acknowledged: acknowledged.length,
      lost: acknowledged.length,
      twice: 0,
      unsaid: 0,
      whole: false,
    }
  const log = read.value
  const times = new Map<string, number>()
  for (const entry of entriesInOrder(log))
    for (const action of actionOf(entry)) times.set(action, (times.get(action) ?? 0) + 1)
  const { whole } = verifyLog(log)
  log.close()
  const said = new Set(acknowledged)
  return {
    acknowledged: acknowledged.length,
    lost: acknowledged.filter((action) => !times.has(action)).length,
    twice: [...times.values()].filter((count) => count > 1).length,
    unsaid: [...times.keys()].filter((action) => !said.has(action)).length,
    whole,
  }
}

export function addAccounts(accounts: readonly Account[]): Account {
  const sum = (of: (each: Account) => number) =>
    accounts.reduce((total, each) => total + of(each), 0)
  return {
    acknowledged: sum((each) => each.acknowledged),
    lost: sum((each) => each.lost),
    twice: sum((each) => each.twice),
    unsaid: sum((each) => each.unsaid),
    whole: accounts.every((each) => each.whole),
  }
}
