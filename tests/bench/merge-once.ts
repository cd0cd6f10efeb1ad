/**
 * One merge in a process of its own, so that its peak of memory is its own:
 * `merge-once.ts ours|attach OUT FILE...` prints milliseconds, those of the processor, and megabytes.
 */
import Database from 'better-sqlite3'
import { entryLog } from '../../db/migrations/0010-entry-log.ts'
import { mergeFiles, stopSign } from '../../db/merge/merge-files.ts'

const [how, out = '', ...files] = process.argv.slice(2)

async function ours(): Promise<void> {
  const watch = { progress: () => undefined, stop: stopSign() }
  const merged = await mergeFiles({ out, files, office: null }, watch)
  if (!merged.ok) throw new Error(merged.refusal.say)
}

/** The plainest copy there is: the same table and its indexes, no check, nothing made for reading. */
function attach(): void {
  const database = new Database(out)
  database.pragma('synchronous = OFF')
  database.pragma('cache_size = -131072')
  entryLog.up(database)
  database.exec('DROP INDEX entry_about')
  for (const file of files) {
    database.prepare('ATTACH ? AS one').run(file)
    database.exec('INSERT OR IGNORE INTO entry SELECT * FROM one.entry')
    database.exec('DETACH one')
  }
  database.close()
}

const start = performance.now()
if (how === 'ours') await ours()
else attach()
const ms = performance.now() - start
const { user, system } = process.cpuUsage()
console.log(
  JSON.stringify({
    ms,
    cpu: (user + system) / 1000,
    megabytes: process.resourceUsage().maxRSS / 1024,
  }),
)
