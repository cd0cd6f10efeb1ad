import type { Signature } from '../../shared-types/handoff.ts'
import { Choice } from '../parts/choice.tsx'
import { SignatureField } from './signature-field.tsx'

type How = Signature['how']

const ways: readonly { value: How; label: string; key: string }[] = [
  { value: 'on-paper', label: 'pen on paper', key: 'p' },
  { value: 'drawn', label: 'on this screen', key: 's' },
]

/** How a person signs. Nobody has to draw: a pen on the printed manifest is as good. */
export function SignatureEntry(props: {
  label: string
  value: Signature
  onChange: (signature: Signature) => void
  autoFocus?: boolean
}) {
  const { label, value, onChange } = props
  return (
    <div className="handoff-signature">
      <Choice
        label={label}
        options={ways}
        value={value.how}
        autoFocus={props.autoFocus}
        onChange={(how) =>
          onChange(how === 'drawn' ? { how: 'drawn', strokes: [] } : { how: 'on-paper' })
        }
      />
      {value.how === 'drawn' && (
        <SignatureField
          label={label}
          onStrokes={(strokes) => onChange({ how: 'drawn', strokes })}
        />
      )}
    </div>
  )
}
