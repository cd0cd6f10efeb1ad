/** A second window on the same desk, with its own person signed in. */
import { z } from 'zod'
import { deskNotAnswering } from '../../shared-types/bridge.ts'
import { Refusal, type Result } from '../../shared-types/result.ts'

const Answer = z.discriminatedUnion('ok', [
  z.object({ ok: z.literal(true), value: z.url() }),
  z.object({ ok: z.literal(false), refusal: Refusal }),
])

/** Electron opens windows from its own menu; a browser window has to ask for a new address. */
export function isWindowAsked(): boolean {
  return window.duskline === undefined
}

/** Asks the desk for an address that opens once, and opens it. */
export async function openSecondWindow(): Promise<Result<string>> {
  try {
    const headers = { 'Content-Type': 'application/json' }
    const response = await fetch('/window', { method: 'POST', headers, body: 'null' })
    const answer = Answer.parse(await response.json())
    if (answer.ok) window.open(answer.value, '_blank', 'noopener')
    return answer
  } catch {
    return { ok: false, refusal: deskNotAnswering }
  }
}
