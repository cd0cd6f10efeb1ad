import { accessSync, constants } from 'node:fs'
import { delimiter, join } from 'node:path'

/** What a search for programs looks at; a test hands in its own. */
export interface Machine {
  readonly platform: NodeJS.Platform
  readonly env: NodeJS.ProcessEnv
  readonly isProgram: (path: string) => boolean
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK)
    return true
  } catch {
    return false
  }
}

/** The machine this runs on. */
export const thisMachine: Machine = {
  platform: process.platform,
  env: process.env,
  isProgram: isExecutable,
}

/** The full path of a program found by its name along PATH. */
export function programOnPath(name: string, { env, isProgram }: Machine): string | undefined {
  const folders = (env.PATH ?? '').split(delimiter).filter(Boolean)
  return folders.map((folder) => join(folder, name)).find(isProgram)
}

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']

function usualPaths({ platform, env }: Machine): string[] {
  if (platform === 'win32') {
    const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA]
    const programs = ['Google\\Chrome', 'Chromium', 'Microsoft\\Edge'].map(
      (name) => `${name}\\Application\\${name.endsWith('Edge') ? 'msedge' : 'chrome'}.exe`,
    )
    return roots.flatMap((folder) => (folder ? programs.map((name) => `${folder}\\${name}`) : []))
  }
  if (platform === 'darwin') {
    return ['Google Chrome', 'Chromium'].map((n) => `/Applications/${n}.app/Contents/MacOS/${n}`)
  }
  return ['/usr/bin', '/usr/local/bin', '/snap/bin'].flatMap((f) => names.map((n) => `${f}/${n}`))
}

/** A Chromium or Chrome to show the screens in: CHROME_PATH, along PATH, then the usual places. */
export function findBrowser(machine: Machine = thisMachine): string | undefined {
  const { env, isProgram } = machine
  if (env.CHROME_PATH && isProgram(env.CHROME_PATH)) return env.CHROME_PATH
  const onPath = names.flatMap((name) => programOnPath(name, machine) ?? [])
  return onPath[0] ?? usualPaths(machine).find(isProgram)
}
