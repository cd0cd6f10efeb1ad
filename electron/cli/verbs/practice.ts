/** `practice`: plays an invented opening day and leaves each desk's log and documents in a folder. */
import { join } from 'node:path'
import { type PlayedDesk, playPracticeDay } from '../../desk/practice/day.ts'
import { officePapers } from '../../desk/practice/office-papers.ts'
import { readDesk } from '../../desk/read-desk.ts'
import { granted, type Result } from '../../../shared-types/result.ts'
import { allGranted, withDesk, writeCloseSheet, writeLabels, writeManifests } from '../documents.ts'
import { makeEmptyFolder, writeNew } from '../new-files.ts'
import { type Outcome, told, whenGranted } from '../outcome.ts'
import type { Progress } from '../progress.ts'

export interface PracticeWish {
  readonly animals: number
  readonly desks: number
  readonly seed: number
  readonly out: string
}

interface LeftBehind extends Omit<PlayedDesk, 'endMs'> {
  readonly documents: string[]
}

export async function practice(wish: PracticeWish, progress: Progress): Promise<Outcome> {
  const folder = makeEmptyFolder(wish.out)
  return whenGranted(folder, async () => {
    const played = await playPracticeDay({ ...wish, folder: wish.out, progress: progress.tell })
    progress.end()
    const left = played.ok ? await leaveAll(played.value, wish.out) : played
    return whenGranted(left, (desks) =>
      whenGranted(leaveOfficePapers(wish.out), (office) =>
        told(linesOf(desks, office), { seed: wish.seed, desks, office }),
      ),
    )
  })
}

function leaveOfficePapers(folder: string): Result<string[]> {
  return writeNew(
    officePapers.map(({ name, text }) => ({ path: join(folder, name), content: text })),
  )
}

async function leaveAll(
  played: readonly PlayedDesk[],
  folder: string,
): Promise<Result<LeftBehind[]>> {
  const left: LeftBehind[] = []
  for (const { endMs, ...desk } of played) {
    const documents = await leaveDocuments(desk.log, endMs, folder)
    if (!documents.ok) return documents
    left.push({ ...desk, documents: documents.value })
  }
  return granted(left)
}

/** As the lead prints them at the end of the day. A day without a bag has no handoff. */
function leaveDocuments(log: string, endMs: number, folder: string): Promise<Result<string[]>> {
  return withDesk(
    readDesk(log, () => endMs),
    async (desk) => {
      const labels = await writeLabels(desk, { folder })
      const sheet = await writeCloseSheet(desk, { folder })
      const manifests = await writeManifests(desk, folder)
      const none = (result: Result<string[]>, code: string) =>
        !result.ok && result.refusal.code === code ? granted<string[]>([]) : result
      return allGranted([
        none(labels, 'no-good-labels'),
        sheet,
        none(manifests, 'no-signed-handoff'),
      ])
    },
  )
}

function linesOf(desks: readonly LeftBehind[], office: readonly string[]): string[] {
  return [
    ...desks.flatMap(({ desk, animals, log, documents }) => [
      `Desk ${desk}, ${animals} animals:`,
      ...[log, ...documents].map((path) => `  ${path}`),
    ]),
    'For coverage, as an office would send it:',
    ...office.map((path) => `  ${path}`),
  ]
}
