/**
 * Sealing of contacts: AES-256 in Galois/Counter Mode (NIST SP 800-38D) with a 96-bit nonce used once,
 * and of their key under a passphrase: scrypt (RFC 7914) with N = 2^17, r = 8, p = 1.
 */
import { createCipheriv, createDecipheriv, scrypt } from 'node:crypto'
import { promisify } from 'node:util'

export const keyBytes = 32
export const nonceBytes = 12
export const saltBytes = 16
const tagBytes = 16
const cost = 17

/** Seals a text: cipher text and tag in base64. The same nonce must never serve one key twice. */
export function seal(key: Uint8Array, nonce: Uint8Array, text: string): string {
  const cipher = createCipheriv('aes-256-gcm', key, nonce)
  const sealed = Buffer.concat([cipher.update(text, 'utf8'), cipher.final()])
  return Buffer.concat([sealed, cipher.getAuthTag()]).toString('base64')
}

/** Opens what `seal` made; null if the key is another or a single bit was changed. */
export function unseal(key: Uint8Array, nonce: Uint8Array, sealed: string): string | null {
  const bytes = Buffer.from(sealed, 'base64')
  if (bytes.length < tagBytes) return null
  const decipher = createDecipheriv('aes-256-gcm', key, nonce)
  decipher.setAuthTag(bytes.subarray(-tagBytes))
  try {
    const text = decipher.update(bytes.subarray(0, -tagBytes))
    return Buffer.concat([text, decipher.final()]).toString('utf8')
  } catch {
    return null
  }
}

const derive = promisify((passphrase: string, salt: Uint8Array, done: Done) =>
  scrypt(
    // Typed on another keyboard, the same words may come as other code points.
    passphrase.normalize('NFKC'),
    salt,
    keyBytes,
    { N: 1 << cost, r: 8, p: 1, maxmem: 256 << 20 },
    done,
  ),
)
type Done = (error: Error | null, key: Buffer) => void

/** A key sealed under a passphrase: `scrypt$17$salt$nonce$sealed`, each in base64. */
export async function wrapKey(
  key: Uint8Array,
  passphrase: string,
  randomBytes: (count: number) => Uint8Array,
): Promise<string> {
  const [salt, nonce] = [randomBytes(saltBytes), randomBytes(nonceBytes)]
  const sealed = seal(await derive(passphrase, salt), nonce, Buffer.from(key).toString('base64'))
  return ['scrypt', cost, base64(salt), base64(nonce), sealed].join('$')
}

/** The key back; null if the passphrase is another. */
export async function unwrapKey(record: string, passphrase: string): Promise<Buffer | null> {
  const [, , salt, nonce, sealed] = record.split('$')
  if (!salt || !nonce || !sealed) return null
  const under = await derive(passphrase, Buffer.from(salt, 'base64'))
  const key = unseal(under, Buffer.from(nonce, 'base64'), sealed)
  return key === null ? null : Buffer.from(key, 'base64')
}

const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64')
