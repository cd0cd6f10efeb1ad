import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import { z } from 'zod'
import { canonicalJson, type Json } from '../../db/canonical-json.ts'
import { Entry, entryBodies, formatVersion } from '../../shared-types/entry.ts'
import { DeskId, Part, sampleNumber } from '../../shared-types/sample-number.ts'

/** What each format is, by its version. Old lines stay: a format that was written is never taken back. */
const formats: Readonly<Record<number, string>> = {
  1: '8de67025ede75c7ebf522503051d92ae3014fbef154f8a64debfa2822500c74d',
}

function formatNow(): string {
  const desk = DeskId.parse('26KRVA')
  const format = {
    entry: z.toJSONSchema(Entry),
    bodies: Object.fromEntries(
      Object.entries(entryBodies).map(([kind, body]) => [kind, z.toJSONSchema(body)]),
    ),
    // A number is a text to its schema, so what numbers look like is told by examples.
    numbers: Part.options.map((part) => sampleNumber(desk, 42, part)),
  }
  return createHash('sha256')
    .update(canonicalJson(format as unknown as Json))
    .digest('hex')
}

test('entries are written as their format version says', () => {
  expect(
    formatNow(),
    'the schemas of entries changed: raise the format version (formatVersion in shared-types/entry.ts), see in db/fold that older entries are still understood, and add the new format here',
  ).toBe(formats[formatVersion])
})
