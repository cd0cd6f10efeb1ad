import { useState } from 'react'
import type { StationSettings } from '../../shared-types/station.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { sayDone } from '../scanner/strip.ts'
import type { LineErrors } from './line-draft.ts'
import { LineFields } from './line-fields.tsx'
import { type SettingsErrors, draftOf, readSettings } from './settings-draft.ts'
import { KeptFields, SampledFields } from './settings-fields.tsx'

/** Changes what is sampled here and how it is kept; animals already checked in keep their record. */
export function SettingsForm(props: { settings: StationSettings; onClose: () => void }) {
  const [draft, setDraft] = useState(() => draftOf(props.settings))
  const [errors, setErrors] = useState<SettingsErrors>({})
  const [lineErrors, setLineErrors] = useState<LineErrors>({})
  const mayChange = useMay('settings.change')
  const { tell, busy, refusal } = useTell('settings.change')
  async function save() {
    const read = readSettings(draft)
    setErrors(read.ok ? {} : read.errors)
    setLineErrors(read.ok ? {} : read.lineErrors)
    if (!read.ok) return
    const answer = await tell({ settings: read.settings })
    if (!answer.ok) return
    sayDone('The settings are changed.')
    props.onClose()
  }
  return (
    <form
      className="settings-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        if (mayChange) void save()
      }}
    >
      <h1>Station settings</h1>
      <SampledFields autoFocus draft={draft} onChange={setDraft} errors={errors} />
      <KeptFields draft={draft} onChange={setDraft} errors={errors} />
      {draft.line && (
        <LineFields
          line={draft.line}
          errors={lineErrors}
          onChange={(line) => setDraft({ ...draft, line })}
        />
      )}
      <RefusalNote refusal={refusal} />
      <div className="row">
        <Button
          kind="main"
          type="submit"
          keyHint="Enter"
          isDisabled={busy || !mayChange}
          why={mayChange ? undefined : 'a station lead changes settings'}
        >
          Save the settings
        </Button>
        <Button keyHint="Esc" onPress={props.onClose}>
          Leave them as they were
        </Button>
      </div>
    </form>
  )
}
