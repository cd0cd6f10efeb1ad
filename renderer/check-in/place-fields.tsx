import type { HarvestUnit } from '../../shared-types/station.ts'
import { Choice } from '../parts/choice.tsx'
import { Shape } from '../parts/shape.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import type { Asking } from './asking.ts'
import { programmeOf, unitByCode } from './draft.ts'
import { Stop } from './stops.tsx'

const byOptions = [
  { value: 'unit', label: 'unit', key: 'U' },
  { value: 'coordinates', label: 'coordinates', key: 'C' },
  { value: 'not-known', label: 'not known', key: 'N' },
] as const

const programmeOptions = [
  { value: 'mandatory', label: 'mandatory', key: 'M' },
  { value: 'voluntary', label: 'voluntary', key: 'V' },
] as const

/** Where the animal was taken, and what that makes of the sampling: mandatory or voluntary. */
export function PlaceFields(asking: Asking) {
  const { draft, change } = asking
  return (
    <>
      <div className="line-of line-of-place">
        <Stop step="by">
          <Choice
            label="Taken at"
            options={byOptions}
            value={draft.by}
            onChange={(by) => change({ by })}
          />
        </Stop>
        {draft.by !== 'not-known' && <UnitEntry {...asking} />}
      </div>
      <div className="line-of line-of-place">
        {draft.by === 'unit' && <PlaceEntry {...asking} />}
        {draft.by === 'coordinates' && <Coordinates {...asking} />}
        {draft.by === 'not-known' && <NotKnown />}
        <ProgrammeChoice {...asking} />
      </div>
    </>
  )
}

function ProgrammeChoice({ draft, change, units }: Asking) {
  return (
    <Stop step="programme">
      <Choice
        label={draft.programme === null ? 'Sampling, by unit' : 'Sampling, by hand'}
        options={programmeOptions}
        value={programmeOf(draft, units)}
        onChange={(programme) => change({ programme })}
      />
    </Stop>
  )
}

/** No location, not tested: Montana FWP, fwp.mt.gov, submitting samples. */
function NotKnown() {
  return (
    <p className="place-warning" role="status">
      <Shape kind="soon" /> A sample without a usable place is commonly not tested. Ask once more: a
      road, a creek or a dot on the map is enough.
    </p>
  )
}

function unitHint(code: string, units: readonly HarvestUnit[]): string | undefined {
  if (code.trim() === '') return undefined
  const unit = unitByCode(code, units)
  if (!unit) return 'not in this station’s list'
  return `${unit.name}${unit.mandatory ? ', sampling mandatory' : ''}`
}

function UnitEntry({ draft, change, missing, units }: Asking) {
  return (
    <Stop step="unit">
      <TextEntry
        label="Unit"
        value={draft.unit}
        onChange={(unit) => change({ unit })}
        hint={unitHint(draft.unit, units)}
        error={missing.unit}
        maxLength={12}
        offers={units.map((unit) => unit.code)}
        numbers
      />
    </Stop>
  )
}

function PlaceEntry({ draft, change, missing }: Asking) {
  return (
    <Stop step="place">
      <TextEntry
        label="Place"
        value={draft.place}
        onChange={(place) => change({ place })}
        hint="road, creek or section"
        error={missing.place}
        maxLength={120}
      />
    </Stop>
  )
}

function Coordinates({ draft, change, missing }: Asking) {
  return (
    <>
      <Stop step="latitude">
        <TextEntry
          label="Latitude"
          value={draft.latitude}
          onChange={(latitude) => change({ latitude })}
          hint="degrees, WGS 84"
          error={missing.latitude}
          inputMode="decimal"
          numbers
        />
      </Stop>
      <Stop step="longitude">
        <TextEntry
          label="Longitude"
          value={draft.longitude}
          onChange={(longitude) => change({ longitude })}
          hint="degrees, west negative"
          error={missing.longitude}
          inputMode="decimal"
          numbers
        />
      </Stop>
    </>
  )
}
