/** `check-manifest FILE LOG`: do paper or file and log agree? Changes nothing. */
import { readFileSync } from 'node:fs'
import { basename } from 'node:path'
import { readDesk } from '../../desk/read-desk.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'
import type { CallInput } from '../../../shared-types/desk-api.ts'
import type { ManifestCheckView } from '../../../shared-types/views/custody.ts'
import { withDesk } from '../documents.ts'
import { notDone, type Outcome, told } from '../outcome.ts'

type Presented = CallInput<'manifest.check'>

/** A file that begins like a PDF is one, whatever it is called. */
function presented(path: string): Result<Presented> {
  try {
    const bytes = readFileSync(path)
    if (bytes.subarray(0, 5).toString('latin1') === '%PDF-')
      return granted({ form: 'pdf', base64: bytes.toString('base64') })
    return granted({ form: 'json', text: bytes.toString('utf8') })
  } catch {
    return refused(
      'file-not-read',
      `${basename(path)} could not be read.`,
      'Check the name, and that the file may be read.',
    )
  }
}

/** Ends well only where all agree; otherwise every difference is told, and the exit code says so. */
export async function checkManifest(file: string, log: string): Promise<Outcome> {
  const given = presented(file)
  if (!given.ok) return notDone(given.refusal)
  const answer = await withDesk(readDesk(log, Date.now), (desk) =>
    desk.ask('manifest.check', given.value),
  )
  if (!answer.ok) return notDone(answer.refusal)
  const { value } = answer
  const outcome = told(lines(basename(file), value), value)
  if (value.state === 'agrees') return outcome
  return { ...outcome, refusal: { code: value.state, say: value.say, next: value.next } }
}

function lines(name: string, { state, say, digests, bags, findings }: ManifestCheckView): string[] {
  return [
    ...(state === 'agrees' ? [`${name}: ${bags.length} bags. ${say}`] : []),
    `Digest stated:      ${digests.stated ?? 'none'}`,
    `Digest of its data: ${digests.computed ?? 'none'}`,
    `Digest in the log:  ${digests.log ?? 'none'}`,
    ...findings.map((finding) => finding.say),
  ]
}
