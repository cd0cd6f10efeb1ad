/**
 * `npm run package`: an installer for this system. `-- --dir` stops before the installer; `-- --electron
 * DIR` takes the runtime from a folder, where the one of the package has not been fetched.
 */
import { parseArgs } from 'node:util'
import { dirname } from 'node:path'
import { build, DIR_TARGET, Platform } from 'electron-builder'
import { buildStale, everyBundle } from './bundles.ts'
import { findElectron } from './electron-runtime.ts'
import { packageConfig } from './package-config.ts'
import { root } from './steps.ts'

const { values } = parseArgs({
  options: { dir: { type: 'boolean', default: false }, electron: { type: 'string' } },
})
const found = process.platform === 'darwin' ? undefined : findElectron()
const electronDist = values.electron ?? (found && dirname(found))

await buildStale(root, everyBundle)
await build({
  projectDir: root,
  publish: 'never',
  config: { ...packageConfig, ...(electronDist ? { electronDist } : {}) },
  ...(values.dir ? { targets: Platform.current().createTarget(DIR_TARGET) } : {}),
})
