/**
 * Canonical JSON: one text for one value, so that a hash of the text is a hash of the value.
 * Source: RFC 8785, JSON Canonicalization Scheme (June 2020). JavaScript's own number and string
 * formatting is the one the RFC prescribes (section 3.2.2); what remains is the order of members.
 */

export type Json =
  | null
  | boolean
  | number
  | string
  | readonly Json[]
  | { readonly [key: string]: Json }

/**
 * The RFC 8785 text of a value; hash its UTF-8 bytes.
 * Throws a TypeError on what JSON cannot hold (NaN, Infinity, undefined, lone surrogates, class
 * instances): such a value in an entry is a bug, and guessing at it would break the chain later.
 */
export function canonicalJson(value: Json): string {
  if (typeof value === 'string') return stringText(value)
  if (typeof value === 'number') return numberText(value)
  if (value === null || typeof value === 'boolean') return String(value)
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`
  if (isPlainObject(value)) return objectText(value)
  throw new TypeError(`canonical JSON cannot hold ${typeof value}`)
}

function stringText(text: string): string {
  if (!text.isWellFormed()) throw new TypeError('canonical JSON cannot hold a lone surrogate')
  return JSON.stringify(text)
}

function numberText(value: number): string {
  if (!Number.isFinite(value)) throw new TypeError(`canonical JSON cannot hold ${value}`)
  return JSON.stringify(value)
}

/** Members sort by UTF-16 code units (RFC 8785 section 3.2.3), which is what `sort()` does unasked. */
function objectText(value: { readonly [key: string]: Json }): string {
  const members = Object.keys(value)
    .sort()
    .map((key) => `${stringText(key)}:${canonicalJson(value[key] as Json)}`)
  return `{${members.join(',')}}`
}

function isPlainObject(value: unknown): value is { readonly [key: string]: Json } {
  if (typeof value !== 'object' || value === null) return false
  const prototype: unknown = Object.getPrototypeOf(value)
  return prototype === Object.prototype || prototype === null
}
