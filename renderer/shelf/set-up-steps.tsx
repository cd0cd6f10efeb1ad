/** The fields of each step of setting up a station. */
import { PinEntry } from '../parts/pin-entry.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { KeptFields, SampledFields } from '../station/settings-fields.tsx'
import type { PlainField, SetUpDraft, SetUpErrors } from './set-up-draft.ts'
import { suggestedCode } from './set-up-draft.ts'

export interface StepProps {
  draft: SetUpDraft
  onChange: (draft: SetUpDraft) => void
  errors: SetUpErrors
}

/** What every plain field of the form shares. */
function entryOf({ draft, onChange, errors }: StepProps, field: PlainField) {
  return {
    value: draft[field],
    error: errors[field],
    onChange: (text: string) => onChange({ ...draft, [field]: text }),
  }
}

export function StationStep(props: StepProps) {
  const { draft, onChange } = props
  const isSuggested = draft.code === suggestedCode(draft.name)
  const upper = (field: 'code' | 'letter') => (text: string) =>
    onChange({ ...draft, [field]: text.toUpperCase() })
  return (
    <>
      <TextEntry
        {...entryOf(props, 'name')}
        label="Name of the station"
        autoFocus
        maxLength={60}
        onChange={(name) =>
          onChange({ ...draft, name, code: isSuggested ? suggestedCode(name) : draft.code })
        }
      />
      <div className="settings-columns">
        <TextEntry
          {...entryOf(props, 'code')}
          label="Station code"
          hint="Three characters, on every label. Left out are those misread by hand: B G I L O S U Z and 0 1 2 5 8."
          numbers
          maxLength={3}
          onChange={upper('code')}
        />
        <TextEntry
          {...entryOf(props, 'letter')}
          label="Letter of this desk"
          hint="Each laptop at the station needs its own, so that no number is given twice."
          numbers
          maxLength={1}
          onChange={upper('letter')}
        />
        <TextEntry
          {...entryOf(props, 'season')}
          label="Season"
          hint="Two digits of the year."
          inputMode="numeric"
          numbers
          maxLength={2}
        />
      </div>
      <div className="settings-columns">
        <TextEntry
          {...entryOf(props, 'zone')}
          label="Time zone"
          hint="As this laptop has it; all times are shown in it."
          offers={Intl.supportedValuesOf('timeZone')}
        />
        <TextEntry {...entryOf(props, 'date')} label="First day" type="date" numbers />
      </div>
    </>
  )
}

export function SampledStep({ draft, onChange, errors }: StepProps) {
  return (
    <SampledFields
      autoFocus
      draft={draft.settings}
      errors={errors}
      onChange={(settings) => onChange({ ...draft, settings })}
    />
  )
}

export function KeptStep({ draft, onChange, errors }: StepProps) {
  return (
    <KeptFields
      autoFocus
      draft={draft.settings}
      errors={errors}
      onChange={(settings) => onChange({ ...draft, settings })}
    />
  )
}

export function LeadStep(props: StepProps) {
  return (
    <>
      <div className="settings-columns">
        <TextEntry
          {...entryOf(props, 'kits')}
          label="Kits counted in stock"
          hint="One kit serves one animal."
          autoFocus
          inputMode="numeric"
          numbers
        />
        <TextEntry
          {...entryOf(props, 'blankLabels')}
          label="Blank labels counted"
          inputMode="numeric"
          numbers
        />
        <TextEntry
          {...entryOf(props, 'coolers')}
          label="Coolers on ice"
          hint="Others are opened on the coolers screen."
          inputMode="numeric"
          numbers
        />
      </div>
      <TextEntry
        {...entryOf(props, 'leadName')}
        label="Your name: you will be the station lead"
        hint="The lead adds the crew next, settles differences and signs the close."
        maxLength={60}
      />
      <div className="settings-columns">
        <PinEntry {...entryOf(props, 'pin')} label="Your PIN" hint="4 to 8 digits." />
        <PinEntry {...entryOf(props, 'pinAgain')} label="Your PIN once more" />
      </div>
    </>
  )
}
