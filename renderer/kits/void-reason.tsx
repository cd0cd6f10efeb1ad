import { useState } from 'react'
import { type VoidReason, voidWords } from '../../shared-types/label.ts'
import { Choice } from '../parts/choice.tsx'
import { TextEntry } from '../parts/text-entry.tsx'

/** Why a person makes a label void; the desk itself adds the other reasons. */
const reasons = [
  'torn',
  'smeared',
  'misprinted',
  'jammed',
  'lost',
  'other',
] as const satisfies readonly VoidReason[]
export type PersonsVoidReason = (typeof reasons)[number]

const options = reasons.map((value, place) => ({
  value,
  label: voidWords[value],
  key: String(place + 1),
}))

export interface VoidReasonHold {
  readonly reason: PersonsVoidReason | null
  readonly words: string
  readonly error: string | undefined
  readonly set: (part: {
    reason?: PersonsVoidReason
    words?: string
    error?: string | undefined
  }) => void
}

/** Why a label is no good, as it is being answered. */
export function useVoidReason(): VoidReasonHold {
  const [state, setState] = useState<Pick<VoidReasonHold, 'reason' | 'words' | 'error'>>({
    reason: null,
    words: '',
    error: undefined,
  })
  return { ...state, set: (part) => setState((now) => ({ ...now, error: undefined, ...part })) }
}

export function VoidReasonFields({ hold }: { readonly hold: VoidReasonHold }) {
  return (
    <>
      <Choice
        label="What is wrong with the label?"
        options={options}
        value={hold.reason}
        onChange={(reason) => hold.set({ reason })}
        error={hold.error}
        autoFocus
      />
      <TextEntry
        label="In your words"
        hint="optional"
        value={hold.words}
        onChange={(words) => hold.set({ words })}
        maxLength={200}
      />
    </>
  )
}
