/** How the line runs: what goes first, how long work takes, how many come and when. */
import { Choice } from '../parts/choice.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import type { LineDraft, LineErrors } from './line-draft.ts'

type TextField = Exclude<keyof LineDraft, 'mandatoryFirst'>

const groups: readonly {
  readonly legend: string
  readonly hint: string
  readonly fields: readonly (readonly [field: TextField, label: string, hint?: string])[]
}[] = [
  {
    legend: 'What goes first in the line',
    hint: 'Spoiling tissue goes first. No hour limit is published: settle your own with the laboratory.',
    fields: [
      ['overtakenAtMost', 'Times anyone may be overtaken'],
      ['spoilingHours', 'Hours after harvest, at 10 °C', 'Half as many at 20 °C, twice at 0 °C.'],
    ],
  },
  {
    legend: 'Minutes that work usually takes',
    hint: 'Where the forecasts begin; each finished animal corrects them during the day.',
    fields: [
      ['deer', 'Deer'],
      ['elkOrMoose', 'Elk or moose'],
      ['between', 'Between two animals'],
      ['damagedHeadTimes', 'Times as long for a damaged head'],
      ['breakMinutes', 'A break'],
      ['samplersAtTable', 'Samplers at one table'],
    ],
  },
  {
    legend: 'Animals of a day',
    hint: 'Where the forecasts begin; the arrivals of the day correct them.',
    fields: [
      ['expectedAnimals', 'Animals expected'],
      ['expectedSpread', 'How far off, percent'],
      ['opens', 'Opens'],
      ['closes', 'Closes'],
    ],
  },
]

export function LineFields(props: {
  line: LineDraft
  onChange: (line: LineDraft) => void
  errors: LineErrors
}) {
  const { line, onChange, errors } = props
  return (
    <>
      <Choice
        label="Between a mandatory and a voluntary animal"
        options={[
          { value: 'mandatory', label: 'the mandatory one goes first' },
          { value: 'first-come', label: 'first come, first worked' },
        ]}
        value={line.mandatoryFirst ? 'mandatory' : 'first-come'}
        onChange={(first) => onChange({ ...line, mandatoryFirst: first === 'mandatory' })}
      />
      {groups.map(({ legend, hint, fields }) => (
        <fieldset key={legend} className="settings-group">
          <legend>{legend}</legend>
          <p className="field-hint">{hint}</p>
          <div className="settings-columns">
            {fields.map(([field, label, fieldHint]) => (
              <TextEntry
                key={field}
                label={label}
                hint={fieldHint}
                numbers
                value={line[field]}
                error={errors[field]}
                onChange={(text) => onChange({ ...line, [field]: text })}
              />
            ))}
          </div>
        </fieldset>
      ))}
      <TextEntry
        label="How busy the day is, from when on"
        hint="A time and a number each, against the others: 07:00 1, 08:00 4."
        numbers
        value={line.profile}
        error={errors.profile}
        onChange={(profile) => onChange({ ...line, profile })}
      />
    </>
  )
}
