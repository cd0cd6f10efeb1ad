/** The contacts of hunters as a whole: their key, their passphrase, and their end. */
import type { ReadableLog } from '../../db/connection.ts'
import {
  countContacts,
  emptyWal,
  noteSealKey,
  purgeContacts,
  sealKeysOf,
} from '../../db/kept-apart.ts'
import { aside } from '../../db/aside.ts'
import { draft } from '../../shared-types/entry.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { CommandHandlers, ShelfHandlers } from './call.ts'
import { checkAllTold } from './results/retention.ts'
import { openKey, sealStateOf } from './kept/contacts.ts'
import type { KeyRing } from './kept/key-ring.ts'
import { unwrapKey, wrapKey } from './kept/seal.ts'
import { checkOwnPin } from './own-pin.ts'
import { noLogOpen } from './refusals.ts'

export const contactCalls = {
  contacts: ({ shelf, kept }) => {
    if (!shelf.log) return noLogOpen()
    return granted({ kept: countContacts(shelf.log), ...sealStateOf(shelf.log, kept.ring) })
  },
} satisfies Partial<ShelfHandlers>

/** Opens every key of a log that a passphrase fits; how many there were. */
export async function openWithPassphrase(
  log: ReadableLog,
  ring: KeyRing,
  passphrase: string,
): Promise<string[]> {
  const opened: string[] = []
  for (const { id, underPassphrase } of sealKeysOf(log)) {
    const key = underPassphrase && (await unwrapKey(underPassphrase, passphrase))
    if (!key) continue
    ring.hold(id, key)
    if (ring.hasKeyStore) ring.keep(id, key)
    opened.push(id)
  }
  return opened
}

export const contactCommands = {
  'contacts.setPassphrase': async ({ act, kept, deps }, { passphrase, keepKeyHere }) => {
    // The key exists before the slow derivation, which must not run within a transaction.
    const own = act((tx) => {
      const key = openKey(tx, kept.ring, deps.randomBytes)
      return key.ok ? granted({ drafts: [], value: key.value }) : key
    })
    if (!own.ok) return own
    const { id, key } = own.value
    const underPassphrase = await wrapKey(key, passphrase, deps.randomBytes)
    const set = act((tx) => {
      noteSealKey(tx, { id, underPassphrase })
      return granted({ drafts: [draft('contacts.passphrase-set', {})], value: {} })
    })
    if (set.ok && !keepKeyHere && !kept.ring.hasKeyStore) kept.ring.takeOffDisk(id)
    return set
  },
  'contacts.unlock': async ({ log, kept, tell }, { passphrase }) => {
    const opened = await openWithPassphrase(log, kept.ring, passphrase)
    if (opened.length === 0) return wrongPassphrase()
    tell(['contacts', 'animal'])
    return granted({})
  },
  'contacts.purge': async (call, { upTo, pin, sure }) => {
    const right = await checkOwnPin(call, pin)
    if (!right.ok) return right
    const { act, log, kept } = call
    const purged = act((tx) => {
      const told = checkAllTold(tx, upTo, sure)
      if (!told.ok) return told
      const contacts = purgeContacts(tx, upTo)
      const drafts = [draft('contacts.purged', { upTo, contacts })]
      return granted({ drafts, value: contacts })
    })
    if (!purged.ok) return purged
    const clean = emptyWal(log)
    const proof = await aside({ do: 'verify', log: log.path })
    if (!proof.ok) return proof
    // The last backup still has them: until a new one is read back they are not gone.
    const backup = kept.keeper.folder === null ? null : await kept.keeper.renew()
    return granted({ contacts: purged.value, clean, backup: backup?.ok ?? null, ...proof.value })
  },
} satisfies Partial<CommandHandlers>

function wrongPassphrase(): Result<never> {
  return refused(
    'passphrase-wrong',
    'That passphrase does not open the contacts of this log.',
    'Type it again; mind capital letters and spaces.',
    'passphrase',
  )
}
