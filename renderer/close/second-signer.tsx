import type { CloseView } from '../../shared-types/views/close.ts'
import { Choice } from '../parts/choice.tsx'
import { PinEntry } from '../parts/pin-entry.tsx'
import { TextEntry } from '../parts/text-entry.tsx'

/** Who signs beside the lead: a person with a PIN, or nobody for a reason. */
export interface Second {
  readonly who: string
  readonly pin: string
  readonly because: string
}

export const nobody = 'nobody'
export const noSecond: Second = { who: '', pin: '', because: '' }

/** What is still to be done before Enter signs. */
export type SecondStop = 'who' | 'proof'

export interface SecondErrors {
  readonly who?: string | undefined
  readonly pin?: string | undefined
  readonly because?: string | undefined
}

/** The second signature: chosen by a key, proved by the person's own PIN. */
export function SecondSigner(props: {
  people: CloseView['second']['people']
  second: Second
  onChange: (second: Second) => void
  here: SecondStop | null
  onChosen: () => void
  errors: SecondErrors
}) {
  const { people, second, onChange, here, onChosen, errors } = props
  const options = [
    ...people.map(({ person, name }, place) => ({
      value: person as string,
      label: name,
      ...(place < 9 ? { key: String(place + 1) } : {}),
    })),
    { value: nobody, label: 'nobody can', key: '0' },
  ]
  const name = people.find(({ person }) => person === second.who)?.name
  return (
    <>
      <Choice
        label="Who signs beside the lead?"
        hint="Somebody who has seen the counts. They type their own PIN."
        options={options}
        value={second.who === '' ? null : second.who}
        onChange={(who) => onChange({ ...second, who })}
        onSettle={onChosen}
        error={errors.who}
        autoFocus={here === 'who'}
      />
      {name && (
        <PinEntry
          key={second.who}
          label={`PIN of ${name}`}
          value={second.pin}
          onChange={(pin) => onChange({ ...second, pin })}
          error={errors.pin}
          autoFocus={here === 'proof'}
        />
      )}
      {second.who === nobody && (
        <TextEntry
          label="Why nobody can"
          hint="It stands on the close sheet."
          value={second.because}
          onChange={(because) => onChange({ ...second, because })}
          error={errors.because}
          maxLength={200}
          autoFocus={here === 'proof'}
        />
      )}
    </>
  )
}
