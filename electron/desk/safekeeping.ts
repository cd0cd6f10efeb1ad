/** Safekeeping: backups and their drill, the light of the screens, and the report for whoever helps. */
import { copyFileSync, existsSync, renameSync } from 'node:fs'
import { join } from 'node:path'
import { aside } from '../../db/aside.ts'
import { headOf } from '../../db/log/read-entries.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { CommandHandlers, ShelfCall, ShelfHandlers } from './call.ts'
import { reportOf } from './kept/report.ts'

export const safekeepingCalls = {
  backup: ({ kept }) => granted(kept.keeper.look()),
  'backup.restore': ({ kept, shelf }, { file }) => restore(kept.keeper.folder, shelf, file),
  light: ({ kept }) => granted({ light: kept.choices.now.light }),
  'light.choose': ({ kept }, { light }) => {
    kept.choices.change({ light })
    return granted({})
  },
  report: (call) => granted(reportOf(call)),
} satisfies Partial<ShelfHandlers>

export const safekeepingCommands = {
  'backup.choose': async ({ kept }, { place }) => {
    const made = await kept.keeper.choose(place)
    return made.ok ? granted({ entries: made.value }) : made
  },
  'backup.stop': ({ kept }) => {
    kept.keeper.stop()
    return granted({})
  },
  'backup.now': async ({ kept }) => {
    const made = await kept.keeper.renew()
    return made.ok ? granted({ entries: made.value }) : made
  },
  'backup.drill': async ({ kept, shelf, log }) => {
    const file = shelf.openFile ?? ''
    const backup = kept.keeper.fileOf(file)
    if (backup === null) return noBackup()
    const headSeq = headOf(log, log.desk)?.seq ?? null
    const drilled = await aside({ do: 'drill', backup, headSeq })
    if (!drilled.ok) return drilled
    const { findings, ...rest } = drilled.value
    return granted({ file, findings: [...findings], ...rest })
  },
} satisfies Partial<CommandHandlers>

function noBackup(): Result<never> {
  return refused(
    'no-backup-place',
    'No place for backups has been chosen on this laptop.',
    'Plug in a stick or disk and choose it first.',
  )
}

/** Brings a backup back to the shelf. A damaged log of that name is set aside, a sound one never. */
function restore(
  folder: string | null,
  shelf: ShelfCall['shelf'],
  file: string,
): Result<{ file: string }> {
  if (folder === null) return noBackup()
  const backup = join(folder, file)
  if (!shelf.isLogName(file) || !existsSync(backup))
    return refused(
      'not-found',
      `There is no backup ${file} at that place.`,
      'Choose one of the list.',
      'file',
    )
  const trouble = shelf.list().find((log) => log.file === file)?.trouble
  if (trouble === null)
    return refused(
      'log-is-sound',
      `${file} on this laptop is sound, so nothing was brought back.`,
      'Open it and go on.',
    )
  const home = shelf.pathOf(file)
  if (existsSync(home)) setAside(home)
  copyFileSync(backup, home)
  return granted({ file })
}

/** A damaged log may still hold what no backup has: it keeps its bytes under another name. */
function setAside(path: string): void {
  let count = 1
  while (existsSync(`${path}.damaged-${count}`)) count += 1
  for (const part of ['', '-wal', '-shm'])
    if (existsSync(path + part)) renameSync(path + part, `${path}.damaged-${count}${part}`)
}
