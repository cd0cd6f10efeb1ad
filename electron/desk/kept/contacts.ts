/** How to reach hunters: sealed when it comes in, opened for those who may see it. */
import { createHash } from 'node:crypto'
import type { ReadableLog } from '../../../db/connection.ts'
import { noteSealKey, type SealedContact, sealKeysOf } from '../../../db/kept-apart.ts'
import type { LogTransaction } from '../../../db/log/append.ts'
import { Contact } from '../../../shared-types/animal.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'
import type { KeyRing } from './key-ring.ts'
import { keyBytes, nonceBytes, seal, unseal } from './seal.ts'

type RandomBytes = (count: number) => Uint8Array

/** The key this log seals with. A log that has none yet gets one when the first contact comes in. */
export function openKey(
  tx: LogTransaction,
  ring: KeyRing,
  randomBytes: RandomBytes,
): Result<{ id: string; key: Uint8Array }> {
  const ids = sealKeysOf(tx).map(({ id }) => id)
  if (ids.length === 0) return newKey(tx, ring, randomBytes)
  for (const id of ids) {
    const key = ring.get(id)
    if (key) return granted({ id, key })
  }
  return contactsLocked()
}

function newKey(tx: LogTransaction, ring: KeyRing, randomBytes: RandomBytes) {
  const id = Buffer.from(randomBytes(8)).toString('hex')
  const key = randomBytes(keyBytes)
  // On disk before the log speaks of it: a contact under a key that is lost could reach nobody.
  if (!kept(ring, id, key)) return keyNotKept()
  noteSealKey(tx, { id, underPassphrase: null })
  return granted({ id, key })
}

function kept(ring: KeyRing, id: string, key: Uint8Array): boolean {
  try {
    ring.keep(id, key)
    return true
  } catch {
    return false
  }
}

function keyNotKept(): Result<never> {
  return refused(
    'key-not-kept',
    'The key for contacts could not be written to this laptop, so the contact was not taken.',
    'Free some space on the disk, then do it again; or check the animal in without a contact.',
  )
}

/** A contact sealed under a log's key. Its digest, in the entry, is of what is sealed: it tells nothing. */
export function sealContact(
  contact: Contact,
  { id, key }: { id: string; key: Uint8Array },
  randomBytes: RandomBytes,
): SealedContact {
  const nonce = randomBytes(nonceBytes)
  const details = seal(key, nonce, JSON.stringify(contact))
  const salt = `${id}.${Buffer.from(nonce).toString('base64')}`
  return { salt, details, digest: createHash('sha256').update(salt).update(details).digest('hex') }
}

/** A contact as its hunter left it; null while its key is not here. */
export function openContact({ salt, details }: SealedContact, ring: KeyRing): Contact | null {
  const [id = '', nonce = ''] = salt.split('.')
  const key = ring.get(id)
  const text = key && unseal(key, Buffer.from(nonce, 'base64'), details)
  return text ? Contact.parse(JSON.parse(text)) : null
}

/** Which key of a log this laptop has, and how it keeps it. */
export function sealStateOf(log: ReadableLog, ring: KeyRing) {
  const keys = sealKeysOf(log)
  const [first] = keys
  if (!first) return { seal: 'none' as const, hasPassphrase: false }
  const open = keys.find(({ id }) => ring.get(id)) ?? first
  return { seal: ring.state(open.id), hasPassphrase: keys.some((key) => key.underPassphrase) }
}

export function contactsLocked(): Result<never> {
  return refused(
    'contacts-locked',
    'The contacts of this log are locked on this laptop.',
    'The lead opens them with the passphrase (station screen, Safekeeping); or check the animal in without a contact.',
  )
}
