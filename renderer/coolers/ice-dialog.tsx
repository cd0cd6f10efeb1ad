import { useState } from 'react'
import type { CallInput } from '../../shared-types/desk-api.ts'
import type { CoolerView } from '../../shared-types/views/coolers.ts'
import { useAsk } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Caution } from '../parts/caution.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Notice } from '../parts/notice.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { Time } from '../parts/time.tsx'
import { saidAt, saidElsewhere } from '../parts/said-at.ts'
import { readTemperature } from './temperature.ts'

const fields = ['iceKg', 'ambientC', 'wattsPerDegree', 'tissueKg', 'tissueC'] as const
type Field = (typeof fields)[number]

const labels: Record<Field, { label: string; hint: string }> = {
  iceKg: { label: 'Ice (kg)', hint: 'Water ice, weighed or by the bag.' },
  ambientC: { label: 'Air around the cooler', hint: 'In °C, like 24. Or in °F, like 75F.' },
  wattsPerDegree: {
    label: 'Heat gain (watts for each degree)',
    hint: 'As the maker states. Leave it empty to fit it from the readings.',
  },
  tissueKg: { label: 'Tissue and water inside (kg)', hint: 'What must be cooled first.' },
  tissueC: { label: 'How warm that goes in', hint: 'In °C, or in °F like 98F.' },
}

function degrees(text: string): number {
  return readTemperature(text) ?? Number.NaN
}

/** How long the ice lasts, by what is told of it; an estimate, with its uncertainty. */
export function IceDialog(props: { cooler: CoolerView; onClose: () => void }) {
  const [typed, setTyped] = useState<Record<Field, string>>({
    iceKg: '',
    ambientC: '',
    wattsPerDegree: '',
    tissueKg: '0',
    tissueC: '4',
  })
  const [asked, setAsked] = useState<CallInput<'ice'>>()
  function ask() {
    const number = (text: string) => Number(text.replace(',', '.'))
    setAsked({
      cooler: props.cooler.cooler,
      iceKg: number(typed.iceKg),
      ambientC: degrees(typed.ambientC),
      wattsPerDegree: typed.wattsPerDegree.trim() === '' ? null : number(typed.wattsPerDegree),
      tissueKg: number(typed.tissueKg),
      tissueC: degrees(typed.tissueC),
    })
  }
  const empty = { cooler: '-', iceKg: 1, ambientC: 1, wattsPerDegree: 1, tissueKg: 0, tissueC: 0 }
  const { data, refusal } = useAsk('ice', asked ?? empty, { enabled: asked !== undefined })
  const said = asked === undefined ? undefined : refusal
  return (
    <Dialog title={`Ice in ${props.cooler.name}`} onClose={props.onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          ask()
        }}
      >
        {fields.map((field, place) => (
          <TextEntry
            key={field}
            {...labels[field]}
            value={typed[field]}
            onChange={(text) => setTyped({ ...typed, [field]: text })}
            error={saidAt(said, field)}
            autoFocus={place === 0}
            numbers
            maxLength={10}
          />
        ))}
        <RefusalNote refusal={saidElsewhere(said, fields)} />
        <div className="row">
          <Button kind="main" type="submit" keyHint="Enter">
            Estimate
          </Button>
        </div>
        {asked && data && !said && (
          <Notice kind="info">
            <p>
              <b>
                About <span className="numbers">{data.hours.toFixed(0)} h</span>, until{' '}
                <Time ms={data.untilMs} />
              </b>
              ; between {data.lowHours.toFixed(0)} and {data.highHours.toFixed(0)} h nineteen times
              in twenty.
            </p>
            <p>
              {data.watts.toFixed(1)} W come in ({data.wattsPerDegree.toFixed(2)} W for each degree,{' '}
              {data.fittedFrom === null
                ? 'as stated, taken as good to a quarter'
                : `fitted from ${data.fittedFrom} readings`}
              ); {data.spentOnTissueKg.toFixed(1)} kg melt to cool what is inside. Latent heat of
              ice 334 kJ/kg.
            </p>
          </Notice>
        )}
        <Caution title="an estimate">
          Read the cooler before you trust it. This is for water ice; dry ice needs air to vent
          into, gloves, and the carrier’s word.
        </Caution>
      </form>
    </Dialog>
  )
}
