/**
 * Any facts a station day can hold, made from the schemas themselves, so that a kind of entry added
 * later is tested without a word here. Numbers come from a small pool: facts then meet on the same
 * animal, kit or cooler, and one changes what another wrote.
 */
import fc, { type Arbitrary } from 'fast-check'
import { z } from 'zod'
import { type EntryDraft, type EntryKind, entryBodies } from '../../shared-types/entry.ts'
import { LocalDate, Zone } from '../../shared-types/local-date.ts'
import * as numbers from '../../shared-types/sample-number.ts'
import { desk } from './temp-log.ts'

type JsonSchema = z.core.JSONSchema.BaseSchema

const pool = <T>(number: (desk: numbers.DeskId, serial: number) => T) =>
  fc.constantFrom(...[1, 2, 3].map((serial) => number(desk, serial)))

/** Texts whose schema checks more than a pattern can say. */
const checkedTexts = new Map<unknown, Arbitrary<string>>([
  [numbers.AnimalNumber, pool(numbers.animalNumber)],
  [numbers.KitNumber, pool(numbers.kitNumber)],
  [numbers.CoolerNumber, pool(numbers.coolerNumber)],
  [numbers.PersonId, pool(numbers.personId)],
  [numbers.HandoffNumber, pool(numbers.handoffNumber)],
  [numbers.SampleNumber, pool(numbers.animalNumber)],
  [numbers.BagNumber, pool((of, serial) => numbers.sampleNumber(of, serial, 'L'))],
  [LocalDate, fc.constantFrom('2026-11-14', '2026-11-15')],
  [Zone, fc.constantFrom('America/Denver', 'America/Boise')],
])

/** One fact of a kind, with any body its schema allows. */
export function draftOf(kind: EntryKind): Arbitrary<EntryDraft> {
  const schema: z.ZodType = entryBodies[kind]
  return bodyOf(schema).map((body) => ({ kind, v: 1, body }) as EntryDraft)
}

export const allKinds = Object.keys(entryBodies) as EntryKind[]

/** A run of facts of any kinds. */
export const drafts: Arbitrary<EntryDraft[]> = fc.array(fc.oneof(...allKinds.map(draftOf)), {
  minLength: 1,
  maxLength: 25,
})

function bodyOf(schema: z.ZodType): Arbitrary<unknown> {
  const checked: Arbitrary<string>[] = []
  const json = z.toJSONSchema(schema, {
    override: ({ zodSchema, jsonSchema }) => {
      const text = checkedTexts.get(zodSchema)
      if (text !== undefined) jsonSchema.$comment = String(checked.push(text) - 1)
    },
  })
  return valueOf(json, checked)
    .map((body) => schema.safeParse(body))
    .filter(({ success }) => success)
    .map(({ data }) => data)
}

function valueOf(schema: JsonSchema, checked: readonly Arbitrary<string>[]): Arbitrary<unknown> {
  const inner = (part: unknown) => valueOf(part as JsonSchema, checked)
  if (schema.$comment !== undefined) return checked[Number(schema.$comment)] ?? fc.constant(null)
  if (schema.const !== undefined) return fc.constant(schema.const)
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum)
  const choices = schema.anyOf ?? schema.oneOf
  if (choices !== undefined) return fc.oneof(...choices.map(inner))
  if (Array.isArray(schema.type))
    return fc.oneof(...schema.type.map((type) => inner({ ...schema, type })))
  switch (schema.type) {
    case 'object':
      return objectOf(schema, inner)
    case 'array':
      return schema.prefixItems === undefined
        ? listOf(schema, inner)
        : fc.tuple(...schema.prefixItems.map(inner))
    case 'string':
      return textOf(schema)
    case 'integer':
      return fc.integer({ min: schema.minimum ?? 0, max: Math.min(schema.maximum ?? 500, 500) })
    case 'number':
      return fc.double({
        min: schema.minimum ?? numberIn(schema.exclusiveMinimum) ?? -90,
        max: schema.maximum ?? numberIn(schema.exclusiveMaximum) ?? 90,
        noNaN: true,
      })
    case 'boolean':
      return fc.boolean()
    case 'null':
      return fc.constant(null)
    default:
      throw new Error(`no values known for ${JSON.stringify(schema)}`)
  }
}

function numberIn(value: unknown): number | undefined {
  return typeof value === 'number' ? value : undefined
}

function listOf({ items, minItems = 0 }: JsonSchema, inner: (part: unknown) => Arbitrary<unknown>) {
  return fc.array(inner(items), { minLength: minItems, maxLength: Math.max(3, minItems) })
}

function objectOf(schema: JsonSchema, inner: (part: unknown) => Arbitrary<unknown>) {
  if (schema.propertyNames !== undefined && typeof schema.additionalProperties === 'object')
    return recordOf(schema, inner)
  const parts = Object.entries(schema.properties ?? {}).map(([key, part]) => [key, inner(part)])
  return fc.record(Object.fromEntries(parts) as Record<string, Arbitrary<unknown>>)
}

function recordOf(schema: JsonSchema, inner: (part: unknown) => Arbitrary<unknown>) {
  const names = (schema.propertyNames as JsonSchema).enum ?? []
  const parts = names.map((name) => [String(name), inner(schema.additionalProperties)])
  return fc.record(Object.fromEntries(parts) as Record<string, Arbitrary<unknown>>)
}

function textOf({ pattern, minLength = 0, maxLength = 30 }: JsonSchema): Arbitrary<string> {
  if (pattern !== undefined) return fc.stringMatching(new RegExp(pattern))
  const length = { minLength: minLength + 2, maxLength: Math.max(maxLength, minLength + 4) }
  return fc.string({ ...length, size: 'small', unit: 'grapheme' })
}
