import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { root } from '../../build/steps.ts'
import { checklist } from './checklist.ts'
import { sourcesIn, syntaxOf } from './syntax.ts'

const packaging = 'build/package-config.ts'
const sources = new Map([
  ...sourcesIn('electron/shell'),
  [packaging, readFileSync(join(root, packaging), 'utf8')],
])
const syntax = syntaxOf(sources)

test('the checklist has all its twenty items, in order', () => {
  expect(checklist.map(({ number }) => number)).toEqual(
    Array.from({ length: 20 }, (_, at) => at + 1),
  )
})

/** Which version is current is no matter of syntax: that item has a test of its own below. */
const inSyntax = checklist.filter(({ number }) => number !== 16)

describe.each(inSyntax)('$number. $title', ({ check, undo }) => {
  test('is met', () => {
    expect(check(syntax)).toEqual([])
  })

  test.each(undo)('is found undone when in %s %j becomes %j', (file, from, to) => {
    const source = sources.get(file) ?? ''
    expect(source).toContain(from)
    const undone = syntaxOf(new Map([...sources, [file, source.replace(from, to)]]))
    expect(check(undone)).not.toEqual([])
  })
})

test('16. Use a current version of Electron: pinned to the exact one that is installed', () => {
  const read = (path: string) => JSON.parse(readFileSync(join(root, path), 'utf8'))
  const { version } = read('node_modules/electron/package.json') as { version: string }
  expect(read('package.json').devDependencies.electron).toBe(version)
})

test('a comment is not taken for the real thing', () => {
  const file = 'electron/shell/main.ts'
  const source = (sources.get(file) ?? '').replace('app.enableSandbox()', '// app.enableSandbox()')
  const undone = syntaxOf(new Map([...sources, [file, source]]))
  expect(checklist[3]?.check(undone)).not.toEqual([])
})
