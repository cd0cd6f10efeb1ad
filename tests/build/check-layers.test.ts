import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { breachesUnder } from '../../build/check-layers.ts'
import { plantTree } from './planted-tree.ts'

const breachesOf = (file: string, text: string) => breachesUnder(plantTree({ [file]: text }))

describe('an arrow that the design does not have is found', () => {
  test.each([
    ['shared-types/entry.ts', `import { open } from '../db/open.ts'`],
    ['shared-types/entry.ts', `import kysely from 'kysely'`],
    ['shared-types/entry.ts', `import { readFileSync } from 'node:fs'`],
    ['db/append.ts', `import { decide } from '../electron/station/decide.ts'`],
    ['db/append.ts', `import { app } from 'electron'`],
    ['electron/station/line.ts', `import { open } from '../../db/open.ts'`],
    ['electron/station/line.ts', `import { run } from '../desk/run.ts'`],
    ['electron/station/line.ts', `import { createHash } from 'crypto'`],
    ['electron/station/line.ts', `import lodash from 'lodash'`],
    ['electron/print/sheet.ts', `import { open } from '../../db/open.ts'`],
    ['electron/print/sheet.ts', `import { line } from '../station/line.ts'`],
    ['electron/desk/run.ts', `import { serve } from '../loopback/serve.ts'`],
    ['electron/desk/run.ts', `import { Kysely } from 'kysely'`],
    ['electron/desk/run.ts', `import Database from 'better-sqlite3'`],
    ['electron/desk/run.ts', `import PDFDocument from 'pdfkit'`],
    ['electron/loopback/serve.ts', `import { app } from 'electron'`],
    ['electron/loopback/serve.ts', `import { line } from '../station/line.ts'`],
    ['electron/cli/main.ts', `import { serve } from '../loopback/serve.ts'`],
    ['electron/shell/main.ts', `import { Line } from '../../renderer/line.tsx'`],
    ['renderer/line.tsx', `import { run } from '../electron/desk/run.ts'`],
    ['renderer/line.tsx', `import { join } from 'node:path'`],
    ['renderer/line.tsx', `import { open } from '../db/open.ts'`],
    ['build/start.ts', `import { serve } from '../electron/loopback/serve.ts'`],
  ])('%s: %s', (file, text) => {
    expect(breachesOf(file, `// nothing here\n${text}\n`)).toMatchObject([{ file, line: 2 }])
  })
})

describe('every way to reach another file counts as an import', () => {
  test.each([
    `import type { Kysely } from 'kysely'`,
    `export { Kysely } from 'kysely'`,
    `export * from 'kysely'`,
    `const late = await import('kysely')`,
    `const old = require('kysely')`,
    `let typed: import('kysely').Kysely<unknown>`,
    `import 'kysely'`,
  ])('%s', (text) => {
    expect(breachesOf('electron/desk/run.ts', text)).toHaveLength(1)
  })
})

test('an arrow that the design has passes', () => {
  const root = plantTree({
    'shared-types/entry.ts': `import { z } from 'zod'\nimport { id } from './ids.ts'`,
    'db/append.ts': `import { Kysely } from 'kysely'\nimport { E } from '../shared-types/entry.ts'`,
    'electron/desk/run.ts': `import { open } from '../../db/open.ts'
      import { line } from '../station/line.ts'
      import { sheet } from '../print/sheet.ts'
      import { scrypt } from 'node:crypto'`,
    'electron/shell/main.ts': `import { app } from 'electron'\nimport { run } from '../desk/run.ts'`,
    'electron/cli/main.ts': `import { Command } from 'commander'`,
    'renderer/line.tsx': `import { useState } from 'react'
      import '../renderer/theme.css'
      import { E } from '../shared-types/entry.ts'
      export const Line = () => <b>import x from 'kysely'</b>`,
  })
  expect(breachesUnder(root)).toEqual([])
})

describe('a pure folder is given time and chance', () => {
  test.each(['Date.now()', 'new Date()', 'Math.random()', 'performance.now()'])('%s', (use) => {
    const text = `export const x = ${use}`
    expect(breachesOf('electron/station/wait.ts', text)).toHaveLength(1)
    expect(breachesOf('shared-types/stamp.ts', text)).toHaveLength(1)
    expect(breachesOf('electron/cli/clock.ts', text)).toEqual([])
  })

  test('a date made from a given time is no breach', () => {
    expect(breachesOf('electron/station/wait.ts', 'export const d = new Date(0)')).toEqual([])
  })
})

test('an import named in a comment or a text is no import', () => {
  const text = `// import x from 'kysely'\nexport const say = "import x from 'kysely'"`
  expect(breachesOf('electron/desk/run.ts', text)).toEqual([])
})

test('a file under electron that lies in no layer is found', () => {
  expect(breachesOf('electron/helper.ts', '')).toMatchObject([{ file: 'electron/helper.ts' }])
})

test('the sentence names both sides and the reason', () => {
  const [breach] = breachesOf('renderer/line.tsx', `import { run } from '../electron/desk/run.ts'`)
  expect(breach?.say).toBe(
    'renderer may not import electron/desk/run.ts: ' +
      'a screen shows and asks; if it needs a rule or a fact, it asks the desk',
  )
})

test('this project keeps its own arrows', () => {
  expect(breachesUnder(join(import.meta.dirname, '../..'))).toEqual([])
})
