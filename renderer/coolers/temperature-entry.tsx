import { TextEntry } from '../parts/text-entry.tsx'
import { bothScales, readTemperature } from './temperature.ts'
import './temperature-entry.css'

/** A temperature as typed, in °C or °F, shown in both before it is told. */
export function TemperatureEntry(props: {
  label?: string
  value: string
  onChange: (text: string) => void
  error?: string
  autoFocus?: boolean
  onEnter?: () => void
}) {
  const { label = 'Temperature', value } = props
  return (
    <div className="temperature">
      <TextEntry
        label={label}
        value={value}
        onChange={props.onChange}
        error={props.error}
        autoFocus={props.autoFocus}
        onEnter={props.onEnter}
        numbers
        maxLength={10}
        hint="In °C, like 3.5. For °F end with F, like 38F."
      />
      <p className="temperature-both numbers">{readBack(value)}</p>
    </div>
  )
}

/** What stands beside the field while it is typed in. */
function readBack(text: string): string {
  if (text.trim() === '') return ''
  const celsius = readTemperature(text)
  return celsius === null ? 'not a temperature yet' : `= ${bothScales(celsius)}`
}
