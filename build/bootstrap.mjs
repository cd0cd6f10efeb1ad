// @ts-check
/**
 * The one script that must run on whatever Node the machine has: it brings the packages and the
 * project's own Node, then hands over. `node build/bootstrap.mjs SCRIPT [ARGS]`.
 */
import { spawn, spawnSync } from 'node:child_process'
import { constants } from 'node:os'
import { delimiter, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { areInstalled, chooseNode, neededMajor } from './own-node.mjs'

const root = fileURLToPath(new URL('..', import.meta.url))

/**
 * @param {string} say
 * @returns {never}
 */
function stop(say) {
  console.error(say)
  process.exit(1)
}

/** npm's own output goes to stderr, so that a command's stdout holds its answer alone. */
function install() {
  console.error('Installing the packages that package-lock.json names ...')
  const npm = process.env.npm_execpath
  // Only errors: warnings would be about the very Node that is about to be replaced.
  const ci = ['ci', '--loglevel=error']
  const { status } = spawnSync(npm ? process.execPath : 'npm', npm ? [npm, ...ci] : ci, {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: !npm && process.platform === 'win32',
  })
  if (status !== 0) {
    stop('The packages could not be installed: put right what npm says above, then try again.')
  }
}

/**
 * Scripts started further down find the same Node first. Its own folder, not node_modules/.bin: an
 * older npm takes the link there away again with the package for the other system.
 * @param {string} node
 */
function environment(node) {
  const key = Object.keys(process.env).find((name) => name.toUpperCase() === 'PATH') ?? 'PATH'
  return { ...process.env, [key]: `${dirname(node)}${delimiter}${process.env[key] ?? ''}` }
}

/**
 * @param {string} node
 * @param {string} script
 * @param {string[]} args
 */
function handOver(node, script, args) {
  const child = spawn(node, [join(root, script), ...args], {
    stdio: 'inherit',
    env: environment(node),
  })
  child.on('error', () => {
    stop(
      `The Node ${neededMajor} in ${node} does not start here: install Node ${neededMajor} from nodejs.org.`,
    )
  })
  child.on('exit', (code, signal) => {
    process.exitCode = code ?? 128 + constants.signals[signal ?? 'SIGTERM']
  })
  // A terminal sends Ctrl-C to the child as well; this process only has to outlive it.
  process.on('SIGINT', () => {})
  process.on('SIGTERM', (signal) => child.kill(signal))
}

const [script, ...args] = process.argv.slice(2)
if (!script) stop('Usage: node build/bootstrap.mjs SCRIPT [ARGS]')
if (!areInstalled(root)) install()
const { platform, arch, version, execPath } = process
const node = chooseNode({ root, platform, arch, version: version.slice(1), execPath })
if (!node.ok) stop(node.say)
handOver(node.path, script, args)
