import { spawnSync } from 'node:child_process'
import { copyFileSync, cpSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { plantTree } from './planted-tree.ts'

const root = join(import.meta.dirname, '../..')

function run(cwd: string, script: string, ...args: string[]): string {
  const path = join(root, 'node_modules', script)
  const { stdout } = spawnSync(process.execPath, [path, ...args], { cwd, encoding: 'utf8' })
  return stdout
}

function lint(file: string, text: string): string {
  const tree = plantTree({ [file]: text })
  copyFileSync(join(root, '.oxlintrc.json'), join(tree, '.oxlintrc.json'))
  return run(tree, 'oxlint/bin/oxlint')
}

function typeCheck(folder: string, text: string): string {
  const tree = plantTree({ [`${folder}/planted.ts`]: text })
  cpSync(join(root, 'build/tsconfig'), join(tree, 'build/tsconfig'), { recursive: true })
  copyFileSync(join(root, folder, 'tsconfig.json'), join(tree, folder, 'tsconfig.json'))
  return run(tree, 'typescript/bin/tsc', '--build', folder)
}

describe('the linter refuses an import and says why', () => {
  test.each([
    ['shared-types/a.ts', '../db/open.ts', 'may know nobody'],
    ['db/a.ts', '../electron/station/line.ts', 'what should happen is decided above it'],
    ['electron/station/a.ts', '../../db/open.ts', 'given what it needs as arguments'],
    ['electron/station/a.ts', 'node:fs', 'knows no file'],
    ['electron/print/a.ts', '../station/line.ts', 'plain data into a page'],
    ['electron/desk/a.ts', '../cli/main.ts', 'Nothing imports a host'],
    ['electron/desk/a.ts', 'kysely', 'Only db knows SQL'],
    ['electron/shell/a.ts', '../loopback/serve.ts', 'nothing imports another host'],
    ['electron/loopback/a.ts', 'electron', 'only electron/shell may import it'],
    ['electron/cli/deep/a.ts', '../../loopback/serve.ts', 'nothing imports another host'],
    ['renderer/line/a.tsx', '../../electron/desk/run.ts', 'it asks the desk'],
    ['renderer/a.tsx', 'node:path', 'sandboxed page'],
  ])('%s importing %s', (file, specifier, why) => {
    const report = lint(file, `import { x } from '${specifier}'\nexport const y = x\n`)
    expect(report).toContain(why)
    expect(report).toContain('1 error')
  })

  test('a host may import its own files', () => {
    const report = lint('electron/cli/a.ts', `import { x } from './verb.ts'\nexport const y = x\n`)
    expect(report).toContain('0 errors')
  })
})

test('the linter refuses the clock and chance in a pure folder only', () => {
  const text = 'export const x = [Date.now(), Math.random()]\n'
  expect(lint('electron/station/a.ts', text)).toContain('2 errors')
  expect(lint('electron/cli/a.ts', text)).toContain('0 errors')
})

describe('a pure folder cannot even name what lies outside the language', () => {
  test.each(['process.env', 'document.title', 'setTimeout', 'fetch'])('%s', (name) => {
    const text = `export const x: unknown = ${name}\n`
    expect(typeCheck('shared-types', text)).toContain(`Cannot find name '${name.split('.')[0]}'`)
  })

  test('the language itself is there', () => {
    expect(typeCheck('shared-types', 'export const x = [3, 1].toSorted()\n')).toBe('')
  })
})
