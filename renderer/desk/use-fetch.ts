import { useState } from 'react'
import type { CallInput, CallOutput, QueryName } from '../../shared-types/desk-api.ts'
import type { Refusal } from '../../shared-types/result.ts'
import { callDesk } from './answer.ts'
import { useConnection } from './desk-provider.tsx'

/** Asks a query once, when a person wants it: a paper or a list that is made on demand. */
export function useFetch<N extends QueryName>(name: N) {
  const connection = useConnection()
  const [refusal, setRefusal] = useState<Refusal>()
  const [busy, setBusy] = useState(false)
  async function fetch(input: CallInput<N>, then: (value: CallOutput<N>) => void) {
    setRefusal(undefined)
    setBusy(true)
    const answer = await callDesk(connection, name, input).finally(() => setBusy(false))
    if (answer.ok) then(answer.value)
    else setRefusal(answer.refusal)
  }
  return { fetch, busy, refusal }
}
