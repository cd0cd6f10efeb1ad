import type { KnownEntry } from '../../shared-types/entry.ts'
import type { SampleNumber } from '../../shared-types/sample-number.ts'
import { put, type RowWrite } from './row-write.ts'

/** The animal an entry is about; of one that names no animal, the bag. */
function subject(body: KnownEntry['body']): SampleNumber | null {
  if ('animal' in body) return body.animal ?? null
  return 'bag' in body ? (body.bag ?? null) : null
}

/** Finds the entry again from its animal or bag, for every kind alike. */
export function aboutWrites({ desk, seq, hash, body }: KnownEntry): RowWrite[] {
  const number = subject(body)
  return number === null ? [] : [put('about', { number, desk, seq, hash })]
}
