import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { findBrowser } from './browser.ts'
import { buildStale, screens, shell } from './bundles.ts'
import { findElectron } from './electron-runtime.ts'
import { root } from './steps.ts'
import { bringMissing, browser } from './system-packages.ts'

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

const args = process.argv.slice(2)
const electron = findElectron()
await (electron ? startInElectron(electron, args) : startInBrowser(args))
