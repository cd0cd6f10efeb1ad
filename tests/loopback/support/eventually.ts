import { expect } from 'vitest'

/** An expectation that may take its time on a busy computer, though never for ever. */
export function eventually<T>(read: () => T): ReturnType<typeof expect.poll<T>> {
  return expect.poll(read, { timeout: 10_000 })
}
