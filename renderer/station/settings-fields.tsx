/** The fields of the station settings, in two groups: what is sampled, and how it is kept. */
import { AgeClass, Species, ageWords, speciesWords } from '../../shared-types/animal.ts'
import { Keeping, type LocationNeed, keepingWords } from '../../shared-types/station.ts'
import { TissueSite, siteWords } from '../../shared-types/tissue.ts'
import { Choice, ManyChoice } from '../parts/choice.tsx'
import { LongEntry } from '../parts/long-entry.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import type { KeptOrNot, SettingsDraft, SettingsErrors } from './settings-draft.ts'
import './settings-fields.css'
import { UnitFields } from './unit-fields.tsx'

export interface SettingsFieldsProps {
  draft: SettingsDraft
  onChange: (draft: SettingsDraft) => void
  errors: SettingsErrors
  autoFocus?: boolean
}

export function SampledFields(props: SettingsFieldsProps) {
  const { draft, onChange, errors } = props
  return (
    <>
      <UnitFields {...props} />
      <fieldset className="settings-group">
        <legend>Age classes that are sampled, by species</legend>
        <p className="field-hint">
          Leave a species empty if it is not sampled here. Many programmes skip young of the year.
        </p>
        <div className="settings-pairs">
          {Species.options.map((species) => (
            <ManyChoice
              key={species}
              label={speciesWords[species]}
              options={AgeClass.options.map((age) => ({ value: age, label: ageWords[age] }))}
              value={draft.ages[species]}
              onChange={(ages) => onChange({ ...draft, ages: { ...draft.ages, [species]: ages } })}
            />
          ))}
        </div>
        <p className="field-error" role="alert">
          {errors.species}
        </p>
      </fieldset>
    </>
  )
}

const keptOptions: { value: KeptOrNot; label: string }[] = [
  { value: 'fresh', label: 'fresh' },
  { value: 'formalin', label: 'in formalin' },
  { value: 'not-taken', label: 'not taken' },
]

const needOptions: { value: LocationNeed; label: string; hint: string }[] = [
  { value: 'unit', label: 'the unit', hint: 'the code is enough' },
  { value: 'unit-and-place', label: 'unit and place', hint: 'road, drainage or section too' },
  { value: 'coordinates', label: 'coordinates', hint: 'latitude and longitude' },
]

export function KeptFields(props: SettingsFieldsProps) {
  const { draft, onChange, errors } = props
  return (
    <>
      <TextEntry
        label="Laboratory the samples go to"
        autoFocus={props.autoFocus}
        maxLength={120}
        value={draft.laboratory}
        error={errors.laboratory}
        onChange={(laboratory) => onChange({ ...draft, laboratory })}
      />
      <Tissues {...props} />
      <Choice
        label="Place of harvest the laboratory needs"
        hint="A sample without a usable place is commonly not tested."
        options={needOptions}
        value={draft.locationNeed}
        onChange={(locationNeed) => onChange({ ...draft, locationNeed })}
      />
      <LongEntry
        label="How a hunter asks for the result"
        hint="Printed on the hunter's stub."
        maxLength={200}
        value={draft.askForResult}
        error={errors.askForResult}
        onChange={(askForResult) => onChange({ ...draft, askForResult })}
      />
      <Limits {...props} />
      <Choice
        label="Who signs the close of a day"
        hint="Four eyes find more. Where nobody else is there, the lead can say so and sign alone."
        options={[
          { value: 'two', label: 'the lead and a second person' },
          { value: 'lead', label: 'the lead alone' },
        ]}
        value={draft.secondSigner ? 'two' : 'lead'}
        onChange={(who) => onChange({ ...draft, secondSigner: who === 'two' })}
      />
    </>
  )
}

function Tissues({ draft, onChange, errors }: SettingsFieldsProps) {
  return (
    <fieldset className="settings-group">
      <legend>Tissues that are taken, and how each is kept</legend>
      <p className="field-hint">
        This decides the test. Fresh tissue can have an immunoassay (ELISA) and may be frozen.
        Tissue in formalin can have immunohistochemistry (IHC) and must never be frozen. Ask the
        laboratory which it wants.
      </p>
      <div className="settings-columns">
        {TissueSite.options.map((site) => (
          <Choice
            key={site}
            label={siteWords[site]}
            options={keptOptions}
            value={draft.tissues[site]}
            onChange={(kept) => onChange({ ...draft, tissues: { ...draft.tissues, [site]: kept } })}
          />
        ))}
      </div>
      <p className="field-error" role="alert">
        {errors.tissues}
      </p>
    </fieldset>
  )
}

function Limits({ draft, onChange, errors }: SettingsFieldsProps) {
  function setLimit(keeping: Keeping, end: 'low' | 'high', text: string) {
    const range = { ...draft.limits[keeping], [end]: text }
    onChange({ ...draft, limits: { ...draft.limits, [keeping]: range } })
  }
  return (
    <fieldset className="settings-group">
      <legend>Time and temperature</legend>
      <p className="field-hint">
        Common starting values; the limits of your laboratory and carrier go first.
      </p>
      <div className="settings-columns">
        <TextEntry
          label="Hours a fresh sample may stay chilled"
          hint="Then it is frozen or delivered."
          inputMode="decimal"
          numbers
          value={draft.holdHours}
          error={errors.holdHours}
          onChange={(holdHours) => onChange({ ...draft, holdHours })}
        />
        <TextEntry
          label="Longest wait you aim for, minutes"
          hint="The line warns near it."
          inputMode="numeric"
          numbers
          value={draft.targetWaitMinutes}
          error={errors.targetWaitMinutes}
          onChange={(targetWaitMinutes) => onChange({ ...draft, targetWaitMinutes })}
        />
      </div>
      <div className="settings-columns">
        {Keeping.options.map((keeping) => (
          <fieldset key={keeping} className="settings-limits">
            <legend>{keepingWords[keeping]}, °C</legend>
            {(['low', 'high'] as const).map((end) => (
              <TextEntry
                key={end}
                label={end === 'low' ? 'from' : 'to'}
                numbers
                value={draft.limits[keeping][end]}
                error={keeping === 'chilled' && end === 'low' ? errors.limits : undefined}
                onChange={(text) => setLimit(keeping, end, text)}
              />
            ))}
          </fieldset>
        ))}
      </div>
    </fieldset>
  )
}
