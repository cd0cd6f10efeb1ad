import { pinRecordOf } from '../../db/kept-apart.ts'
import type { Result } from '../../shared-types/result.ts'
import type { CommandCall } from './call.ts'

/** Whoever is signed in proves once more that it is they, before what cannot be taken back. */
export function checkOwnPin(call: CommandCall, pin: string): Promise<Result<null>> {
  const { pins, by, log, now } = call
  return pins.check(by.person, pin, pinRecordOf(log, by.person), now)
}
