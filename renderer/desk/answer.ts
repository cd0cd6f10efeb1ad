/** One question or command carried to the desk and its answer read back. */
import { z } from 'zod'
import type { Bridge } from '../../shared-types/bridge.ts'
import {
  type CallInput,
  type CallName,
  type CallOutput,
  deskApi,
} from '../../shared-types/desk-api.ts'
import { Refusal, type Result } from '../../shared-types/result.ts'

const Envelope = z.discriminatedUnion('ok', [
  z.object({ ok: z.literal(true), value: z.unknown() }),
  z.object({ ok: z.literal(false), refusal: Refusal }),
])

/** Calls the desk; the answer has crossed a process, so it is parsed before anybody believes it. */
export async function callDesk<N extends CallName>(
  bridge: Bridge,
  name: N,
  input: CallInput<N>,
): Promise<Result<CallOutput<N>>> {
  const answer = Envelope.parse(await bridge.call(name, input))
  if (!answer.ok) return answer
  return { ok: true, value: deskApi[name].output.parse(answer.value) as CallOutput<N> }
}

/** A refused question, thrown so that the last good answer stays on the screen beside it. */
export class RefusedError extends Error {
  readonly refusal: Refusal

  constructor(refusal: Refusal) {
    super(refusal.say)
    this.refusal = refusal
  }
}
