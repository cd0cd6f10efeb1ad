import { TextEntry } from './text-entry.tsx'

/** A PIN: 4 to 8 digits, shown as dots. */
export function PinEntry(props: {
  label?: string
  value: string
  onChange: (pin: string) => void
  hint?: string
  error?: string
  autoFocus?: boolean
  onEnter?: () => void
}) {
  const { label = 'PIN', onChange, ...rest } = props
  return (
    <TextEntry
      {...rest}
      label={label}
      isSecret
      numbers
      inputMode="numeric"
      maxLength={8}
      onChange={(text) => onChange(text.replace(/\D/g, ''))}
    />
  )
}
