import { useState } from 'react'
import type { ForecastView } from '../../shared-types/views/forecast.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { Time } from '../parts/time.tsx'
import { sayDone } from '../scanner/strip.ts'

/** The air at the line: the warmer it is, the sooner a head goes first. */
export function AirReading(props: { air: ForecastView['air'] }) {
  const { air } = props
  const read = useTell('air.read')
  const may = useMay('air.read')
  const [text, setText] = useState('')
  const celsius = Number(text.trim().replace(',', '.').replace('−', '-'))
  const isNumber = text.trim() !== '' && Number.isFinite(celsius)
  async function keep() {
    if (!isNumber) return
    const answer = await read.tell({ celsius })
    if (!answer.ok) return
    sayDone(`Air at the line: ${celsius} °C.`)
    setText('')
  }
  return (
    <div className="ahead-samplers">
      <TextEntry
        label="Air at the line, °C"
        inputMode="decimal"
        value={text}
        onChange={setText}
        onEnter={() => void keep()}
        hint="Warm heads spoil sooner, and spoiling heads go first."
      />
      <p>
        {air ? (
          <>
            Last read <b className="numbers">{air.celsius} °C</b>, <Time ms={air.ms} />.
          </>
        ) : (
          'Not read yet.'
        )}
      </p>
      <RefusalNote refusal={read.refusal} />
      <Button
        isDisabled={!may || !isNumber || read.busy}
        why={may ? 'type a temperature' : 'not your role'}
        onPress={() => void keep()}
      >
        Keep the reading
      </Button>
    </div>
  )
}
