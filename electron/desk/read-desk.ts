/** The desk over a file that is only read: any query of the contract, and nothing that changes the file. */
import { readLog } from '../../db/log/read-log.ts'
import { stationOf } from '../../db/read/station.ts'
import { type CallInput, type CallOutput, deskApi } from '../../shared-types/desk-api.ts'
import { granted, type Result } from '../../shared-types/result.ts'
import type { QueryCall, QueryHandler, QueryHandlers } from './call.ts'
import { queryHandlers } from './handlers.ts'
import { badInput, neverSetUp } from './refusals.ts'

export interface FileDesk {
  /** Nobody is signed in, so what is kept apart, such as how to reach a hunter, is never answered. */
  ask<N extends keyof QueryHandlers>(name: N, input: CallInput<N>): Promise<Result<CallOutput<N>>>
  close(): void
}

/** Opens a station log to ask it. Refuses as `readLog` does, and with `never-set-up`. */
export function readDesk(path: string, now: () => number): Result<FileDesk> {
  const opened = readLog(path)
  if (!opened.ok) return opened
  const log = opened.value
  const station = stationOf(log)
  if (!station) {
    log.close()
    return neverSetUp(path)
  }
  return granted({
    ask: (name, input) =>
      answer({ log, station, person: null, now: now(), reveal: () => null }, name, input),
    close: () => log.close(),
  })
}

async function answer<N extends keyof QueryHandlers>(
  call: QueryCall,
  name: N,
  input: CallInput<N>,
): Promise<Result<CallOutput<N>>> {
  const parsed = deskApi[name].input.safeParse(input)
  if (!parsed.success) return badInput(parsed.error)
  // The name picks the handler, so input and answer fit it; the compiler cannot follow that through.
  const handler = queryHandlers[name] as unknown as QueryHandler<N>
  return handler(call, parsed.data as never)
}
