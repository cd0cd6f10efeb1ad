/** `publish FILE --to postgres://...`: the record into a database that many offices query. */
import { basename } from 'node:path'
import { readLog } from '../../../db/log/read-log.ts'
import { publishLog } from '../../../db/publish/publish.ts'
import { notDone, type Outcome, told, whenGranted } from '../outcome.ts'

export async function publish(
  file: string,
  to: string,
  progress: (what: string, share: number) => void,
): Promise<Outcome> {
  const opened = readLog(file)
  if (!opened.ok) return notDone(opened.refusal)
  const log = opened.value
  try {
    return await whenGranted(await publishLog(log, to, progress), (published) =>
      told(
        [
          `${basename(file)}: ${published.added} entries new on the server, which has ${published.entries} now.`,
          ...(published.ofOthers > 0
            ? [
                `${published.ofOthers} of them were published by others, and its tables hold them too.`,
              ]
            : []),
        ],
        published,
      ),
    )
  } finally {
    log.close()
  }
}
