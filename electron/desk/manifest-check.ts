/** Whether a manifest on paper or in a file agrees with the log: anyone with both can tell. */
import { createHash } from 'node:crypto'
import { canonicalJson, type Json } from '../../db/canonical-json.ts'
import type { ReadableLog } from '../../db/connection.ts'
import { handoffOf } from '../../db/read/handoffs.ts'
import { knownOfKind } from '../../db/read/disputes.ts'
import { type Manifest, ManifestFile } from '../../shared-types/manifest.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import { siteWords } from '../../shared-types/tissue.ts'
import type { ManifestCheckView } from '../../shared-types/views/custody.ts'
import { type CheckFinding, differences, paperDifferences } from '../station/manifest-check.ts'
import { readManifestPdf } from '../print/read-back.ts'
import type { QueryHandlers } from './call.ts'

/** SHA-256 of a manifest's canonical JSON (RFC 8785). */
export function digestOf(manifest: Manifest): string {
  const text = canonicalJson(manifest as unknown as Json)
  return createHash('sha256').update(text).digest('hex')
}

interface Presented {
  readonly form: 'pdf' | 'json'
  /** The digest it states: printed, or written in the file. */
  readonly stated: string | null
  readonly manifest: Manifest
  /** What paper and data inside one PDF say differently. */
  readonly within: readonly CheckFinding[]
}

function notAManifest(): Result<never> {
  return refused(
    'not-a-manifest',
    'That file is no manifest of this program.',
    'Choose the PDF or the JSON file that was made with the handoff.',
    'text',
  )
}

function dataOf(text: string): Result<{ digest: string; manifest: Manifest }> {
  try {
    const read = ManifestFile.safeParse(JSON.parse(text))
    return read.success ? granted(read.data) : notAManifest()
  } catch {
    return notAManifest()
  }
}

async function presentedPdf(base64: string): Promise<Result<Presented>> {
  const paper = await readManifestPdf(new Uint8Array(Buffer.from(base64, 'base64')))
  if (!paper?.data) return notAManifest()
  const data = dataOf(paper.data)
  if (!data.ok) return data
  const { manifest } = data.value
  const listed = manifest.coolers.flatMap(({ bags }) => bags.map(({ bag }) => bag))
  return granted({
    form: 'pdf',
    stated: paper.digest,
    manifest,
    within: paperDifferences(paper.bags, listed),
  })
}

function presentedJson(text: string): Result<Presented> {
  const data = dataOf(text)
  if (!data.ok) return data
  const { digest: stated, manifest } = data.value
  return granted({ form: 'json', stated, manifest, within: [] })
}

interface Verdict {
  readonly state: ManifestCheckView['state']
  readonly say: string
  readonly next: string
}

const agrees: Verdict = {
  state: 'agrees',
  say: 'Paper or file and log agree.',
  next: 'Count the bags in the coolers against the list, and look at each seal.',
}

const differs: Verdict = {
  state: 'differs',
  say: 'What is presented is not what was signed.',
  next: 'Keep it as it is, look at the differences below, and ask the station’s lead before anything is tested.',
}

function verdictOf(log: ReadableLog, presented: Presented, computed: string, now: string | null) {
  const { manifest, stated, within } = presented
  const whole = stated === computed && within.length === 0
  if (now === null)
    return {
      state: 'not-in-this-log' as const,
      say: `This log has no signed handoff ${grouped(manifest.handoff)}${whole ? '; the document agrees with itself' : ''}.`,
      next: 'Check it against the log of the station that signed it, or the merged log.',
    }
  if (whole && computed === now) return agrees
  const earlier = whole && editionsOf(log, manifest).includes(computed)
  if (!earlier) return differs
  return {
    state: 'replaced' as const,
    say: 'This manifest was signed so, and a corrected one has taken its place.',
    next: 'Print the corrected manifest, which names this one, and put both with the coolers.',
  }
}

/** The digests of every edition of a handoff's manifest. */
function editionsOf(log: ReadableLog, { handoff }: Manifest): string[] {
  return [...knownOfKind(log, 'handoff.signed'), ...knownOfKind(log, 'handoff.corrected')].flatMap(
    ({ body }) => (body.handoff === handoff ? [body.digest] : []),
  )
}

function digestFindings(stated: string | null, computed: string): CheckFinding[] {
  if (stated === computed) return []
  const say =
    stated === null
      ? 'No digest is printed on the pages.'
      : 'The digest stated is not the digest of the data: one of them was changed.'
  return [{ say, bag: null }]
}

function checkView(log: ReadableLog, presented: Presented): ManifestCheckView {
  const { manifest, form, stated, within } = presented
  const computed = digestOf(manifest)
  const signed = handoffOf(log, manifest.handoff)?.signed ?? null
  return {
    form,
    handoff: manifest.handoff,
    desk: manifest.desk,
    ...verdictOf(log, presented, computed, signed?.digest ?? null),
    digests: { stated, computed, log: signed?.digest ?? null },
    findings: [
      ...digestFindings(stated, computed),
      ...within,
      ...(signed && signed.digest !== computed ? differences(manifest, signed.manifest) : []),
    ],
    coolers: manifest.coolers.map(({ cooler, name, seal }) => ({ cooler, name, seal })),
    bags: manifest.coolers.flatMap(({ name, seal, bags }) =>
      bags.map(({ bag, side }) => ({ bag, cooler: name, side: siteWords[side], seal })),
    ),
  }
}

export const manifestCheckQueries = {
  'manifest.check': async ({ log }, input) => {
    const presented =
      input.form === 'pdf' ? await presentedPdf(input.base64) : presentedJson(input.text)
    return presented.ok ? granted(checkView(log, presented.value)) : presented
  },
} satisfies Partial<QueryHandlers>
