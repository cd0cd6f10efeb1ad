/** Files that a verb makes. Never over one that is there: it might be the record itself. */
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { granted, type Result, refused } from '../../shared-types/result.ts'

export interface NewFile {
  readonly path: string
  readonly content: string | Uint8Array
}

/** Writes all of them or, as far as can be known beforehand, none. Answers with their paths. */
export function writeNew(files: readonly NewFile[]): Result<string[]> {
  const there = files.find(({ path }) => existsSync(path))
  if (there) return alreadyThere(there.path)
  return onDisk(() => {
    for (const { path, content } of files) writeFileSync(path, content, { flag: 'wx' })
    return files.map(({ path }) => path)
  })
}

/** Makes a folder unless it is there. */
export function makeFolder(path: string): Result<string> {
  return onDisk(() => {
    mkdirSync(path, { recursive: true })
    return path
  })
}

/** Makes a folder, or takes one in which nothing lies yet. */
export function makeEmptyFolder(path: string): Result<string> {
  const made = makeFolder(path)
  if (!made.ok || readdirSync(path).length === 0) return made
  return refused(
    'folder-not-empty',
    `There are already files in ${path}.`,
    'Name an empty folder, or one that is not there yet.',
  )
}

function alreadyThere(path: string): Result<never> {
  return refused(
    'file-exists',
    `There is already a file ${path}.`,
    'Give another name, or move the old file away.',
  )
}

function onDisk<T>(act: () => T): Result<T> {
  try {
    return granted(act())
  } catch (error) {
    const { code = '', path = '' } = error as NodeJS.ErrnoException
    if (code === 'EEXIST') return alreadyThere(path)
    if (code === 'ENOENT' || code === 'ENOTDIR') return noFolder(path)
    if (['EACCES', 'EPERM', 'EROFS', 'EISDIR'].includes(code)) return notWritable(path)
    if (code === 'ENOSPC' || code === 'EDQUOT') return diskFull(path)
    throw error
  }
}

function noFolder(path: string): Result<never> {
  return refused(
    'no-folder',
    `There is no folder ${dirname(path)}.`,
    'Make it first, or name a folder that is there.',
  )
}

function notWritable(path: string): Result<never> {
  return refused(
    'medium-read-only',
    `Nothing can be written at ${path}.`,
    'Choose another place, or lift the write protection.',
  )
}

function diskFull(path: string): Result<never> {
  return refused('disk-full', `The disk is full at ${path}.`, 'Make room and do it again.')
}
