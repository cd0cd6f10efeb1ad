import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { expect, test } from 'vitest'
import { z } from 'zod'
import { ManifestFile } from '../../shared-types/manifest.ts'
import { courierManifest } from '../support/manifest.ts'

const path = join(import.meta.dirname, '../../shared-types/manifest.schema.json')

function schemaNow(): string {
  const schema = {
    title: 'Handoff manifest',
    description:
      'The JSON file given with sealed coolers: manifest and SHA-256 of its canonical form.',
    ...z.toJSONSchema(ManifestFile),
  }
  return `${JSON.stringify(schema, null, 2)}\n`
}

if (process.env['WRITE_SCHEMA']) writeFileSync(path, schemaNow())

test('the published schema is that of the manifest as it is written (WRITE_SCHEMA=1 writes it anew)', () => {
  // As data: the formatter has its own mind about the lines of a JSON file.
  expect(JSON.parse(readFileSync(path, 'utf8'))).toEqual(JSON.parse(schemaNow()))
})

// JSON Schema 2020-12, read by a general validator.
const validate = new Ajv2020({ validateFormats: false, allErrors: true }).compile(
  JSON.parse(readFileSync(path, 'utf8')) as object,
)

test('a general validator takes a manifest', () => {
  expect(validate(courierManifest()), JSON.stringify(validate.errors)).toBe(true)
})

test.each([
  [
    'without a seal',
    (file: ManifestFile) => Reflect.deleteProperty(file.manifest.coolers[0] ?? {}, 'seal'),
  ],
  [
    'with a word too many',
    (file: ManifestFile) => Object.assign(file.manifest, { hunter: 'somebody' }),
  ],
  ['with a digest cut short', (file: ManifestFile) => Object.assign(file, { digest: 'abc' })],
  ['of another form', (file: ManifestFile) => Object.assign(file.manifest, { form: 'other' })],
])('and refuses one %s', (_what, spoil) => {
  const file = courierManifest()
  spoil(file)
  expect(validate(file)).toBe(false)
})
