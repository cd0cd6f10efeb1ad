/** How a screen asks the desk and tells it things. Screens decide no rules: they ask. */
import { useQuery } from '@tanstack/react-query'
import { useCallback, useEffect, useState } from 'react'
import type { CallInput, CallOutput, CommandName, QueryName } from '../../shared-types/desk-api.ts'
import type { Refusal, Result } from '../../shared-types/result.ts'
import type { WhoView } from '../../shared-types/views/people.ts'
import { RefusedError, callDesk } from './answer.ts'
import { useConnection } from './desk-provider.tsx'

export interface Asked<N extends QueryName> {
  /** The last good answer; it stays while it is asked again, and beside a later refusal. */
  readonly data: CallOutput<N> | undefined
  readonly refusal: Refusal | undefined
  readonly fetching: boolean
  /** When the last good answer came, on this computer's clock. */
  readonly receivedMs: number
}

export interface AskOptions {
  /** False while there is nothing to ask yet. */
  readonly enabled?: boolean
  /** Ask again this often, for what changes with time alone. */
  readonly everyMs?: number
}

/** Asks a query and keeps the answer fresh: it is asked again when one of its topics changes. */
export function useAsk<N extends QueryName>(
  name: N,
  input: CallInput<N>,
  options: AskOptions = {},
): Asked<N> {
  const connection = useConnection()
  const { data, error, isFetching, dataUpdatedAt } = useQuery<CallOutput<N>>({
    queryKey: [name, input],
    queryFn: async () => {
      const answer = await callDesk(connection, name, input)
      if (!answer.ok) throw new RefusedError(answer.refusal)
      return answer.value
    },
    enabled: options.enabled ?? true,
    refetchInterval: options.everyMs ?? false,
  })
  // Anything but a refusal is a bug, and belongs to the nearest error boundary.
  if (error !== null && !(error instanceof RefusedError)) throw error
  return { data, refusal: error?.refusal, fetching: isFetching, receivedMs: dataUpdatedAt }
}

export interface Teller<N extends CommandName> {
  readonly tell: (input: CallInput<N>) => Promise<Result<CallOutput<N>>>
  readonly busy: boolean
  /** Why the last one was refused, until the next is told or it is cleared. */
  readonly refusal: Refusal | undefined
  readonly clear: () => void
}

/** Gives a command to the desk. What `tell` answers with `ok` is on disk. */
export function useTell<N extends CommandName>(name: N): Teller<N> {
  const connection = useConnection()
  const [underway, setUnderway] = useState(0)
  const [refusal, setRefusal] = useState<Refusal>()
  const tell = useCallback(
    async (input: CallInput<N>) => {
      setRefusal(undefined)
      setUnderway((count) => count + 1)
      try {
        const answer = await callDesk(connection, name, input)
        if (!answer.ok) setRefusal(answer.refusal)
        return answer
      } finally {
        setUnderway((count) => count - 1)
      }
    },
    [connection, name],
  )
  const clear = useCallback(() => setRefusal(undefined), [])
  return { tell, busy: underway > 0, refusal, clear }
}

/** The input of a query that needs none; one object, so that it is one key. */
export const nothing = {}

/** Who sits at this window, at what station, on what day; asked again each minute for the date. */
export function useWho(): WhoView | undefined {
  return useAsk('who', nothing, { everyMs: 60_000 }).data
}

/** Whether the role of whoever sits here may give a command. */
export function useMay(command: CommandName): boolean {
  return useWho()?.may.includes(command) ?? false
}

/** Whether the desk answers. */
export function useReach(): boolean {
  const connection = useConnection()
  const [reachable, setReachable] = useState(true)
  useEffect(() => connection.onReach(setReachable), [connection])
  return reachable
}
