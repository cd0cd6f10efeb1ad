import { TextEntry } from '../parts/text-entry.tsx'
import { bothScales, readTemperature } from './temperature.ts'
import './temperature-entry.css'

/** A temperature as typed, in °C or °F, shown in both before it is told. */
export function TemperatureEntry(props: {
  value: string
  onChange: (text: string) => void
  error?: string
  autoFocus?: boolean
  onEnter?: () => void
}) {
  const { value } = props
  const celsius = readTemperature(value)
  return (
    <div className={celsius === null ? 'temperature-entry' : 'temperature-entry temperature-read'}>
      <TextEntry
        label="Temperature"
        value={value}
        onChange={props.onChange}
        error={props.error}
        autoFocus={props.autoFocus}
        onEnter={props.onEnter}
        numbers
        maxLength={10}
        hint={
          celsius === null ? 'In °C, like 3.5. Or in °F, like 38F.' : `= ${bothScales(celsius)}`
        }
      />
    </div>
  )
}
