/**
 * One merge in a process of its own, so that its peak of memory is its own:
 * `merge-once.ts ours|attach OUT FILE...` prints milliseconds and megabytes.
 */
import Database from 'better-sqlite3'
import { entryLog } from '../../db/migrations/0010-entry-log.ts'
import { mergeLogs } from '../../db/merge/merge.ts'

const [how, out = '', ...files] = process.argv.slice(2)

function ours(): void {
  const merged = mergeLogs({ out, files, office: null })
  if (!merged.ok) throw new Error(merged.refusal.say)
}

/** The plainest copy there is: the same table with the same indexes, no check, no read tables. */
function attach(): void {
  const database = new Database(out)
  database.pragma('synchronous = OFF')
  database.pragma('cache_size = -131072')
  entryLog.up(database)
  for (const file of files) {
    database.prepare('ATTACH ? AS one').run(file)
    database.exec('INSERT OR IGNORE INTO entry SELECT * FROM one.entry')
    database.exec('DETACH one')
  }
  database.close()
}

const start = performance.now()
if (how === 'ours') ours()
else attach()
const ms = performance.now() - start
console.log(JSON.stringify({ ms, megabytes: process.resourceUsage().maxRSS / 1024 }))
