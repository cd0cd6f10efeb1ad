/** `guide`: the one-page guide of a role as a new PDF. */
import type { GuideFor } from '../../../shared-types/help/guides.ts'
import { guideFile } from '../../desk/guide.ts'
import { writeNew } from '../new-files.ts'
import { type Outcome, told, whenGranted } from '../outcome.ts'

export async function guide(role: GuideFor, out: string): Promise<Outcome> {
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone
  const { base64 } = await guideFile(role, zone, Date.now())
  const written = writeNew([{ path: out, content: Buffer.from(base64, 'base64') }])
  return whenGranted(written, (files) => told(files, { files }))
}
