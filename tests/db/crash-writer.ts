/**
 * A desk that works as fast as it can until it is killed. Says on its output each action it was told
 * is on disk. Run as its own program: `node crash-writer.ts FILE.stationlog`.
 */
import { writeSync } from 'node:fs'
import { argv } from 'node:process'
import { transact } from '../../db/log/append.ts'
import { openLog } from '../../db/log/open.ts'
import { draft } from '../../shared-types/entry.ts'
import { granted } from '../../shared-types/result.ts'
import { personId } from '../../shared-types/sample-number.ts'

const opened = openLog(argv[2] ?? '')
if (!opened.ok) throw new Error(opened.refusal.say)
const log = opened.value

// Each action is two facts that must never be there one without the other.
const person = personId(log.desk, 1)
const facts = [
  draft('person.added', { person, name: 'Ada Moss', role: 'lead', training: [] }),
  draft('person.signed-in', { person }),
]

for (let now = Date.UTC(2026, 10, 14); ; now += 1) {
  const result = transact(log, { now, by: person }, (tx) => granted(tx.append(facts).at(-1)?.seq))
  // Written straight to the pipe: an acknowledgement waiting in a buffer would die with the program.
  if (result.ok) writeSync(1, `${result.value}\n`)
}
