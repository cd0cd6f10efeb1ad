/** Where station logs to merge may lie: the desk's own folder, the folders in it, those picked, and sticks. */
import { createHash } from 'node:crypto'
import { type Dirent, readdirSync, statSync } from 'node:fs'
import { basename, join } from 'node:path'
import type { MergePlace } from '../../shared-types/views/merge.ts'

const ending = '.stationlog'

interface Folder {
  readonly place: string
  readonly words: string
  readonly path: string
}

type Offered = ReadonlySet<string>

/** Where systems hang up sticks: folders of folders. */
const stickRoots = ['/media', '/run/media', '/Volumes', '/mnt']
const driveLetters = Array.from('DEFGHIJKLMNOPQRSTUVWXYZ', (letter) => `${letter}:\\`)

function foldersIn(path: string): string[] {
  return listing(path)
    .filter((each) => each.isDirectory() && !each.name.startsWith('.'))
    .map((each) => join(path, each.name))
    .toSorted()
}

function listing(path: string): Dirent[] {
  try {
    return readdirSync(path, { withFileTypes: true })
  } catch {
    // Not there, not ours to read, or just pulled out.
    return []
  }
}

const tokenOf = (path: string) => createHash('sha256').update(path).digest('base64url').slice(0, 12)

/** Every place, its logs yet to be looked for. A screen names a place by its token, never by a path. */
function placesOf(folder: string, offered: Offered): Folder[] {
  const sticks =
    process.platform === 'win32'
      ? driveLetters
      : stickRoots.flatMap((root) => foldersIn(root).flatMap((path) => [path, ...foldersIn(path)]))
  return [
    { place: 'shelf', words: "This laptop's folder", path: folder },
    ...foldersIn(folder).map((path) => ({
      place: `shelf/${basename(path)}`,
      words: `Folder ${basename(path)}`,
      path,
    })),
    ...[...offered].map((path) => ({
      place: tokenOf(path),
      words: `Folder ${basename(path) || path}, picked`,
      path,
    })),
    ...sticks.map((path) => ({
      place: tokenOf(path),
      words: `Stick ${basename(path) || path}`,
      path,
    })),
  ]
}

function logsIn({ path }: Folder): MergePlace['files'] {
  return listing(path)
    .filter((each) => each.isFile() && each.name.endsWith(ending))
    .map(({ name }) => ({ file: name, bytes: sizeOf(join(path, name)) }))
    .toSorted((a, b) => (a.file < b.file ? -1 : 1))
}

function sizeOf(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.size ?? 0
}

/** The places that have station logs in them; `offered` are the folders picked outside the screens. */
export function mergePlaces(folder: string, offered: Offered): MergePlace[] {
  return placesOf(folder, offered)
    .map((each) => ({ place: each.place, words: each.words, files: logsIn(each) }))
    .filter(({ files }) => files.length > 0)
}

/** The paths of files that a place was shown to have; null if one is not there. */
export function pathsAt(
  folder: string,
  offered: Offered,
  place: string,
  files: readonly string[],
): string[] | null {
  const found = placesOf(folder, offered).find((each) => each.place === place)
  if (!found) return null
  const there = new Set(logsIn(found).map(({ file }) => file))
  return files.every((file) => there.has(file)) ? files.map((file) => join(found.path, file)) : null
}
