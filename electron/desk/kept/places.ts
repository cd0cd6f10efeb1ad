/** Where a backup can go: other disks and sticks of this laptop, and folders offered by its host. */
import { createHash } from 'node:crypto'
import { readdirSync, statSync } from 'node:fs'
import { userInfo } from 'node:os'
import { basename, join } from 'node:path'
import type { BackupPlace } from '../../../shared-types/views/safekeeping.ts'

/** Where systems put what is plugged in. */
function mountFolders(): string[] {
  if (process.platform === 'win32')
    return Array.from('DEFGHIJKLMNOPQRSTUVWXYZ', (letter) => `${letter}:\\`)
  if (process.platform === 'darwin') return inside('/Volumes')
  const { username } = userInfo()
  return [join('/media', username), join('/run/media', username)].flatMap(inside)
}

function inside(folder: string): string[] {
  try {
    return readdirSync(folder).map((name) => join(folder, name))
  } catch {
    return []
  }
}

/** The names of the logs in a folder. */
export function logsIn(folder: string): string[] {
  return inside(folder)
    .map((path) => basename(path))
    .filter((name) => name.endsWith('.stationlog'))
}

export function isThere(folder: string): boolean {
  try {
    readdirSync(folder)
    return true
  } catch {
    return false
  }
}

/** Whether two folders are on different disks: one disk may fail, or be left on the tailgate. */
export function areApart(a: string, b: string): boolean {
  return statSync(a).dev !== statSync(b).dev
}

/** A place as a screen sees it: its mark leads back to the path here and tells nothing there. */
export function placeOf(path: string): BackupPlace {
  const mark = createHash('sha256').update(path).digest('hex').slice(0, 16)
  return { mark, name: basename(path) || path }
}

/** The folders that can be chosen, by their marks. */
export function placesAt(offered: readonly string[]): Map<string, string> {
  const paths = [...offered, ...mountFolders()].filter(isThere)
  return new Map(paths.map((path) => [placeOf(path).mark, path]))
}
