import { Button } from '../parts/button.tsx'
import { ManyChoice } from '../parts/choice.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import type { UnitDraft } from './settings-draft.ts'
import type { SettingsFieldsProps } from './settings-fields.tsx'

/** The harvest units, a row each; a row left empty does not count. */
export function UnitFields({ draft, onChange, errors, autoFocus }: SettingsFieldsProps) {
  const { units } = draft
  const set = (changed: readonly UnitDraft[]) => onChange({ ...draft, units: changed })
  const change = (unit: UnitDraft) => set(units.map((each) => (each.id === unit.id ? unit : each)))
  const add = () => {
    const id = Math.max(0, ...units.map((unit) => unit.id)) + 1
    set([...units, { id, code: '', name: '', mandatory: false }])
  }
  return (
    <fieldset className="settings-group">
      <legend>Harvest units: the areas a tag is valid for</legend>
      {units.map((unit, place) => (
        <div key={unit.id} className="settings-unit">
          <TextEntry
            label={`Code of unit ${place + 1}`}
            numbers
            maxLength={12}
            value={unit.code}
            autoFocus={(autoFocus === true && place === 0) || (place > 0 && unit.code === '')}
            error={place === 0 ? errors.units : undefined}
            onChange={(code) => change({ ...unit, code })}
          />
          <TextEntry
            label="Its name, if it has one"
            maxLength={60}
            value={unit.name}
            onChange={(name) => change({ ...unit, name })}
          />
          <ManyChoice
            label="Sampling"
            options={[{ value: 'mandatory', label: 'mandatory here' }]}
            value={unit.mandatory ? ['mandatory'] : []}
            onChange={(picked) => change({ ...unit, mandatory: picked.length > 0 })}
          />
          <Button
            label={`Remove unit ${place + 1}`}
            isDisabled={units.length === 1}
            onPress={() => set(units.filter((each) => each.id !== unit.id))}
          >
            Remove
          </Button>
        </div>
      ))}
      <div>
        <Button keyHint="Alt+U" onPress={add}>
          Add a unit
        </Button>
      </div>
    </fieldset>
  )
}
