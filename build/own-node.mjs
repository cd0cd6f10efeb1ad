// @ts-check
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** The line of Node that the program is written for; the database library crashes on an older one. */
export const neededMajor = 24

/** @typedef {{ version?: string, optional?: boolean }} LockedPackage */

/**
 * @param {string} file
 * @returns {Record<string, LockedPackage>}
 */
function packagesIn(file) {
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')).packages : {}
}

/**
 * Whether node_modules holds what package-lock.json names. Optional packages may be missing, since
 * some are for other systems, but may not be of another version. Versions are compared, not dates:
 * npm writes the two files in either order, and git sets dates of its own.
 * @param {string} root
 */
export function areInstalled(root) {
  const wanted = packagesIn(join(root, 'package-lock.json'))
  const present = packagesIn(join(root, 'node_modules', '.package-lock.json'))
  return Object.entries(wanted).every(([path, { version, optional }]) => {
    if (path === '') return true
    const found = present[path]
    return found ? found.version === version : optional === true
  })
}

/** @typedef {{ root: string, platform: string, arch: string, version: string, execPath: string }} Here */

/**
 * @param {Here} here
 * @returns {string}
 */
function ownNodePath({ root, platform, arch }) {
  const system = platform === 'win32' ? 'win' : platform
  const file = platform === 'win32' ? 'node.exe' : 'node'
  return join(root, 'node_modules', `node-${system}-${arch}`, 'bin', file)
}

/**
 * The Node to run the program with: the project's own, else the one running now if it is new enough.
 * @param {Here} here
 * @returns {{ ok: true, path: string } | { ok: false, say: string }}
 */
export function chooseNode(here) {
  const own = ownNodePath(here)
  if (existsSync(own)) return { ok: true, path: own }
  if (Number.parseInt(here.version, 10) >= neededMajor) return { ok: true, path: here.execPath }
  const say = `Duskline needs Node ${neededMajor} and this is Node ${here.version}, with none of its own for ${here.platform} ${here.arch}: install Node ${neededMajor} from nodejs.org, then try again.`
  return { ok: false, say }
}
