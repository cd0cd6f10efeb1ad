/**
 * Which laptop goes on with a log. A copied file that lives on beside its original makes two different
 * entries with one number, so a log names the laptop that may append to it.
 */
import { connectionOf, type ReadableLog } from './connection.ts'
import type { LogTransaction } from './log/append.ts'
import { type Params, prepareOne, prepareRun } from './statement.ts'

/**
 * `free`: whoever opens it next takes it, as after a move; `moved`: it went to another laptop, and
 * this copy is only for reading; else the laptop, by the mark that its host gives.
 */
export type Holder = 'free' | 'moved' | (string & {})

const row = prepareOne((db) => db.selectFrom('lease').select('holder'))

/** Who may go on with this log. */
export function holderOf(log: ReadableLog): Holder {
  return row(log)?.holder ?? 'free'
}

const put = prepareRun((db, p: Params<{ holder: Holder }>) =>
  db
    .insertInto('lease')
    .values({ one: 1, holder: p('holder') })
    .onConflict((conflict) => conflict.column('one').doUpdateSet({ holder: p('holder') })),
)

/** Gives the log to another holder, within the action that says so. */
export function setHolder(tx: LogTransaction, holder: Holder): void {
  put(tx, { holder })
}

/** Lets a finished copy, which nobody has open, be taken by whoever opens it next. */
export function freeCopy(copy: ReadableLog): void {
  connectionOf(copy).prepare("UPDATE lease SET holder = 'free'").run()
}
