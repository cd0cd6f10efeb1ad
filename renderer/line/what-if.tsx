import { useState } from 'react'
import type { CallInput } from '../../shared-types/desk-api.ts'
import { useWho } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { TextEntry } from '../parts/text-entry.tsx'

type Extra = NonNullable<CallInput<'ahead'>['extra']>

/** What one more sampler or a second table would change, from now or from a time of day on. */
export function WhatIf(props: { extra: Extra; onChange: (extra: Extra) => void }) {
  const [from, setFrom] = useState('')
  const at = /^([01]\d|2[0-3]):[0-5]\d$/.test(from) ? from : null
  const table = useWho()?.settings.line?.samplersAtTable ?? 2
  const fromWords = at === null ? 'from now' : `from ${at}`
  return (
    <div className="row ahead-what">
      <TextEntry label="What if, from (empty: now)" type="time" value={from} onChange={setFrom} />
      <Button keyHint="a" onPress={() => props.onChange([{ count: 1, at }])}>
        One more sampler {fromWords}
      </Button>
      <Button keyHint="t" onPress={() => props.onChange([{ count: table, at }])}>
        A second table ({table}) {fromWords}
      </Button>
    </div>
  )
}
