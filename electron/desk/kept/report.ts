/** The report a lead can send: what the program is, how it fares, and the end of its diary. */
import { countEntries } from '../../../db/log/read-entries.ts'
import { latestFormat } from '../../../db/migrations/list.ts'
import type { TextFile } from '../../../shared-types/views/common.ts'
import type { ShelfCall } from '../call.ts'
import { nowhere } from '../machine.ts'

const diaryLines = 200

/** Plain text, made to be read before it is sent. No person, tag, number, file name or path is in it. */
export function reportOf({ deps, kept, shelf, now }: ShelfCall): TextFile {
  const { log } = shelf
  const { last, trouble, place } = kept.keeper.look()
  const facts = {
    ...(deps.machine ?? nowhere).about,
    'made at': new Date(now).toISOString(),
    zone: deps.zone,
    'log format': latestFormat,
    'entries in the open log': log ? countEntries(log) : 'no log is open',
    'backup place': place ? 'chosen' : 'none',
    'last good backup': last ? new Date(last.atMs).toISOString() : 'none',
    'backup trouble': trouble ? 'yes' : 'none',
  }
  const lines = Object.entries(facts).map(([what, fact]) => `${what}: ${fact}`)
  const text = ['Duskline report', ...lines, '', ...kept.diary.latest(diaryLines), ''].join('\n')
  return { name: `duskline-report-${new Date(now).toISOString().slice(0, 10)}.txt`, text }
}
