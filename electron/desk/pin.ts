/** PINs: kept as scrypt records (RFC 7914), checked in constant time, and guessed slowly. */
import { scrypt, timingSafeEqual } from 'node:crypto'
import { promisify } from 'node:util'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { PersonId } from '../../shared-types/sample-number.ts'

const derive = promisify(
  (pin: string, salt: Uint8Array, cost: number, done: (e: Error | null, key: Buffer) => void) =>
    scrypt(pin, salt, keyLength, { N: 2 ** cost, r: 8, p: 1, maxmem: 64 << 20 }, done),
)
/** The power of two that slows guessing down: some tenths of a second a try. */
const fullCost = 15
/** The PIN of a practice day is told to everyone, so nothing is gained by being slow. */
const practiceCost = 10
const keyLength = 32

/** A record from which the PIN cannot be read back: `scrypt$15$salt$key`, both in base64. */
export async function pinRecord(pin: string, salt: Uint8Array, practice: boolean): Promise<string> {
  const cost = practice ? practiceCost : fullCost
  const key = await derive(pin, salt, cost)
  return ['scrypt', cost, Buffer.from(salt).toString('base64'), key.toString('base64')].join('$')
}

/** Whether a PIN is the one a record was made of. */
export async function pinFits(pin: string, record: string): Promise<boolean> {
  const [, cost, salt, key] = record.split('$')
  // A record of another cost was not made here: a damaged one must not keep the desk busy for hours.
  if (![fullCost, practiceCost].includes(Number(cost)) || !salt || !key) return false
  const expected = Buffer.from(key, 'base64')
  const found = await derive(pin, Buffer.from(salt, 'base64'), Number(cost))
  return expected.length === found.length && timingSafeEqual(expected, found)
}

const triesBeforeWait = 5
const waitMs = 30_000

/** Slows guessing down: after five wrong PINs in a row a person must wait half a minute. */
export class PinGuard {
  readonly #wrong = new Map<PersonId, { tries: number; lastMs: number }>()

  /** Checks a PIN against its record; refuses `pin-wait`, `pin-not-set` or `pin-wrong`. */
  async check(
    person: PersonId,
    pin: string,
    record: string | null,
    now: number,
  ): Promise<Result<null>> {
    const wait = this.#waitLeft(person, now)
    if (wait > 0)
      return refused(
        'pin-wait',
        'The PIN was wrong five times in a row.',
        `Wait ${Math.ceil(wait / 1000)} seconds, then try again, or ask the lead to set a new PIN.`,
        'pin',
      )
    if (record === null)
      return refused('pin-not-set', 'This person has no PIN.', 'Ask the lead to set one.', 'pin')
    // Counted before the slow check, so that guesses sent side by side are counted too.
    this.#count(person, now)
    if (!(await pinFits(pin, record)))
      return refused(
        'pin-wrong',
        'That PIN is wrong.',
        'Type it again. A station lead can set a new one.',
        'pin',
      )
    this.forgive(person)
    return granted(null)
  }

  /** Lets a person try again at once: a new PIN was set for them. */
  forgive(person: PersonId): void {
    this.#wrong.delete(person)
  }

  #waitLeft(person: PersonId, now: number): number {
    const wrong = this.#wrong.get(person)
    if (!wrong || wrong.tries < triesBeforeWait) return 0
    const passed = now - wrong.lastMs
    if (passed < waitMs && passed >= 0) return waitMs - passed
    this.#wrong.delete(person)
    return 0
  }

  #count(person: PersonId, now: number): void {
    const tries = (this.#wrong.get(person)?.tries ?? 0) + 1
    this.#wrong.set(person, { tries, lastMs: now })
  }
}
