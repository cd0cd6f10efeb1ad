import { rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { fingerprint, isStale, markBuilt, screens } from '../../build/bundles.ts'
import { plantTree } from './planted-tree.ts'

function builtTree(): string {
  const root = plantTree({
    'package-lock.json': '{}',
    [screens.config]: '',
    'renderer/index.html': '<p>line</p>',
    'renderer/line/line.tsx': 'export const a = 1',
    'shared-types/entry.ts': 'export const b = 1',
    [screens.output]: '<p>line</p>',
  })
  markBuilt(root, screens, fingerprint(root, screens))
  return root
}

describe('a bundle is stale', () => {
  test('not while its sources are those it was built from', () => {
    expect(isStale(builtTree(), screens)).toBe(false)
  })

  test.each([
    'renderer/line/line.tsx',
    'shared-types/entry.ts',
    'package-lock.json',
    screens.config,
  ])('when %s changed', (file) => {
    const root = builtTree()
    writeFileSync(join(root, file), 'changed')
    expect(isStale(root, screens)).toBe(true)
  })

  test('when a source was added', () => {
    const root = builtTree()
    writeFileSync(join(root, 'renderer/new.ts'), '')
    expect(isStale(root, screens)).toBe(true)
  })

  test.each(['renderer/line/line.tsx', screens.output, '.cache/built/renderer'])(
    'when %s is gone',
    (file) => {
      const root = builtTree()
      rmSync(join(root, file))
      expect(isStale(root, screens)).toBe(true)
    },
  )
})
