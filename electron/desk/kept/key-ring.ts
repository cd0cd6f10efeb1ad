/** The keys to contacts that this laptop has, each by its id. None of them is ever in a log or a backup. */
import { join } from 'node:path'
import { z } from 'zod'
import type { SealState } from '../../../shared-types/views/safekeeping.ts'
import type { KeyStore } from '../machine.ts'
import { readSmall, writeSmall } from './small-file.ts'

const Kept = z.record(
  z.string(),
  z.object({ how: z.enum(['key-store', 'beside']), key: z.base64() }),
)

export class KeyRing {
  readonly #path: string
  readonly #store: KeyStore | undefined
  readonly #open = new Map<string, Buffer>()

  constructor(folder: string, store?: KeyStore) {
    this.#path = join(folder, 'contact-keys.json')
    this.#store = store
  }

  /** The key of an id, if this laptop has it. */
  get(id: string): Buffer | null {
    const known = this.#open.get(id) ?? this.#read(id)
    if (known) this.#open.set(id, known)
    return known
  }

  /** How a key is kept here. */
  state(id: string): SealState {
    const kept = this.#kept()[id]
    if (kept && this.get(id)) return kept.how
    return this.#open.has(id) ? 'memory' : 'locked'
  }

  /** Has a key until the program ends. */
  hold(id: string, key: Uint8Array): void {
    this.#open.set(id, Buffer.from(key))
  }

  /** Keeps a key on this laptop: with the operating system where it can, else in a file of this user. */
  keep(id: string, key: Uint8Array): void {
    const text = Buffer.from(key).toString('base64')
    const kept = this.#store
      ? { how: 'key-store', key: Buffer.from(this.#store.seal(text)).toString('base64') }
      : { how: 'beside', key: text }
    this.hold(id, key)
    writeSmall(this.#path, { ...this.#kept(), [id]: kept })
  }

  /** Takes a key off the disk; it is still open until the program ends. */
  takeOffDisk(id: string): void {
    const { [id]: _gone, ...rest } = this.#kept()
    writeSmall(this.#path, rest)
  }

  /** Whether the operating system keeps the keys here. */
  get hasKeyStore(): boolean {
    return this.#store !== undefined
  }

  #kept(): z.infer<typeof Kept> {
    return readSmall(this.#path, Kept) ?? {}
  }

  #read(id: string): Buffer | null {
    const kept = this.#kept()[id]
    if (!kept) return null
    try {
      const text =
        kept.how === 'beside' ? kept.key : this.#store?.open(Buffer.from(kept.key, 'base64'))
      return text ? Buffer.from(text, 'base64') : null
    } catch {
      // Sealed by another user or laptop: here it is as good as not there.
      return null
    }
  }
}
