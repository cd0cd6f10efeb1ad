/** `labels` and `manifest`: the documents of a log, read and never added to. */
import { readDesk } from '../../desk/read-desk.ts'
import { withDesk, writeLabels, writeManifests } from '../documents.ts'
import { makeFolder } from '../new-files.ts'
import { type Outcome, told, whenGranted } from '../outcome.ts'
import type { Result } from '../../../shared-types/result.ts'

function writtenTo(files: Result<string[]>): Promise<Outcome> {
  return whenGranted(files, (paths) => told(paths, { files: paths }))
}

/** Every label that is good by the log, marked RECORD ONLY: a label to stick on is reprinted at the desk. */
export async function labels(file: string, out: string): Promise<Outcome> {
  return writtenTo(
    await withDesk(readDesk(file, Date.now), (desk) => writeLabels(desk, { file: out })),
  )
}

export async function manifest(file: string, folder: string): Promise<Outcome> {
  return writtenTo(
    await withDesk(readDesk(file, Date.now), async (desk) => {
      const made = makeFolder(folder)
      return made.ok ? writeManifests(desk, folder) : made
    }),
  )
}
