import { expect, test } from 'vitest'
import { sha256 } from '../../db/log/hash-chain.ts'

// FIPS 180-4, "Secure Hash Standard", with the example messages NIST gives for SHA-256
// (csrc.nist.gov, "Cryptographic Standards and Guidelines: Example Values"). Digests from memory,
// recomputed with a second implementation.
const examples: readonly (readonly [what: string, message: string, digest: string])[] = [
  ['one block', 'abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'two blocks',
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
  [
    'a million letters',
    'a'.repeat(1_000_000),
    'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0',
  ],
]

test.each(examples)('the hash of the log is SHA-256: %s', (_, message, digest) => {
  expect(sha256(message)).toBe(digest)
})

// RFC 9162 section 2.1.1: the hash of an empty list is the hash of an empty string.
test('the hash of the log is SHA-256: the empty message', () => {
  expect(sha256('')).toBe('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855')
})
