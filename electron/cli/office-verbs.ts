/** The verbs of an office: `merge` and `publish`. */
import { resolve } from 'node:path'
import type { AddVerb, ProgramDeps } from './program.ts'

export function addOfficeVerbs(add: AddVerb, { cwd, progress, end }: ProgramDeps): void {
  const at = (path: string) => resolve(cwd, path)
  add('merge <files...>', 'make one log out of many; the files stay as they are')
    .requiredOption('--out <file>', 'the merged log: a new one, or one to merge into')
    .action(async (files: string[], { json, out }) => {
      const { merge } = await import('./verbs/merge.ts')
      const outcome = await merge({
        out: at(out),
        files: files.map(at),
        progress: ({ done, total }) => progress.say('Merging', done / total),
      })
      progress.end()
      end(outcome, json)
    })
  add('publish <file>', 'put the record into a PostgreSQL server; contacts and PINs stay here')
    .requiredOption('--to <address>', 'like postgres://name@host:5432/database')
    .action(async (file: string, { json, to }) => {
      const { publish } = await import('./verbs/publish.ts')
      const outcome = await publish(at(file), to, progress.say)
      progress.end()
      end(outcome, json)
    })
}
