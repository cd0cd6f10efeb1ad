import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { root } from './steps.ts'

const executables: Partial<Record<NodeJS.Platform, string>> = {
  win32: 'electron.exe',
  darwin: 'Electron.app/Contents/MacOS/Electron',
}

function read(file: string): string | undefined {
  return existsSync(file) ? readFileSync(file, 'utf8') : undefined
}

function isFetched(folder: string): boolean {
  const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
  return read(join(folder, 'dist', 'version'))?.replace(/^v/, '') === version
}

/**
 * The Electron executable, when it is here. The package itself is never asked: it answers a missing
 * runtime by fetching it. ELECTRON_OVERRIDE_DIST_PATH names a folder to use instead.
 */
export function findElectron(
  folder: string = join(root, 'node_modules', 'electron'),
  { platform, env }: Pick<NodeJS.Process, 'platform' | 'env'> = process,
): string | undefined {
  const name = executables[platform] ?? 'electron'
  const instead = env.ELECTRON_OVERRIDE_DIST_PATH
  if (!instead && !isFetched(folder)) return undefined
  const path = join(instead ?? join(folder, 'dist'), name)
  return existsSync(path) ? path : undefined
}
