import { spawn } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { homedir } from 'node:os'
import { join } from 'node:path'
import { findBrowser } from './browser.ts'
import { buildStale, screens, shell } from './bundles.ts'
import { findElectron } from './electron-runtime.ts'
import { root } from './steps.ts'
import { bringMissing, browser } from './system-packages.ts'

/** Where a person's station logs lie unless `--folder` says otherwise: where their system keeps such things. */
function dataFolder(): string {
  const { platform, env } = process
  if (platform === 'win32') return join(env.LOCALAPPDATA ?? homedir(), 'Duskline')
  if (platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Duskline')
  return join(env.XDG_DATA_HOME || join(homedir(), '.local', 'share'), 'duskline')
}

function folderArgs(given: readonly string[]): string[] {
  if (given.some((arg) => arg === '--folder' || arg.startsWith('--folder='))) return []
  const folder = dataFolder()
  mkdirSync(folder, { recursive: true })
  return ['--folder', folder]
}

function run(program: string, args: readonly string[], env: NodeJS.ProcessEnv): void {
  const child = spawn(program, args, { cwd: root, stdio: 'inherit', env })
  child.on('exit', (code) => {
    process.exitCode = code ?? 1
  })
  // A terminal sends Ctrl-C to the child as well; this process only has to outlive it.
  process.on('SIGINT', () => {})
  process.on('SIGTERM', (signal) => child.kill(signal))
}

async function startInElectron(electron: string, args: readonly string[]): Promise<void> {
  await buildStale(root, [screens, ...shell])
  run(electron, ['.', ...args], process.env)
}

async function startInBrowser(args: readonly string[]): Promise<void> {
  console.log(
    'The Electron runtime is not here (npm run fetch-electron brings it): using a browser window.',
  )
  await buildStale(root, [screens])
  bringMissing([{ ...browser, without: 'open the address below in a browser of your own' }])
  const env = { ...process.env, CHROME_PATH: findBrowser() }
  run(process.execPath, [join(root, 'electron/loopback/main.ts'), ...args], env)
}

const given = process.argv.slice(2)
const args = [...folderArgs(given), ...given]
const electron = findElectron()
await (electron ? startInElectron(electron, args) : startInBrowser(args))
