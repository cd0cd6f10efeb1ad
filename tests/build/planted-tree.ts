import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { onTestFinished } from 'vitest'
import { layers } from '../../build/layers.ts'

const manifest = { 'package.json': '{"type":"module"}' }

/** A tree with every folder of the project and only the files a test plants; gone after the test. */
export function plantTree(files: Readonly<Record<string, string>>): string {
  const root = mkdtempSync(join(tmpdir(), 'duskline-tree-'))
  onTestFinished(() => rmSync(root, { recursive: true, force: true }))
  for (const { folder } of layers) mkdirSync(join(root, folder), { recursive: true })
  for (const [file, text] of Object.entries({ ...manifest, ...files })) {
    mkdirSync(dirname(join(root, file)), { recursive: true })
    writeFileSync(join(root, file), text)
  }
  return root
}
