import { AgeClass, Species, ageWords, speciesWords } from '../../shared-types/animal.ts'
import { Choice } from '../parts/choice.tsx'
import type { Asking } from './asking.ts'
import { HarvestDate } from './harvest-date.tsx'
import { Stop } from './stops.tsx'

const speciesOptions = Species.options.map((value, place) => ({
  value,
  label: speciesWords[value],
  key: String(place + 1),
}))

const sexOptions = [
  { value: 'male', label: 'male', key: 'M' },
  { value: 'female', label: 'female', key: 'F' },
  { value: 'unknown', label: 'unknown', key: 'U' },
] as const

const presentedOptions = [
  { value: 'carcass', label: 'carcass', key: 'C' },
  { value: 'head-only', label: 'head only', key: 'H' },
] as const

const ageOptions = AgeClass.options.map((value, place) => ({
  value,
  label: ageWords[value],
  key: String(place + 1),
}))

/** What was brought, and when it was taken. */
export function AnimalFields(asking: Asking) {
  const { draft, change, missing } = asking
  return (
    <>
      <Stop step="species">
        <Choice
          label="Species"
          options={speciesOptions}
          value={draft.species}
          onChange={(species) => change({ species })}
          error={missing.species}
        />
      </Stop>
      <SexAndPresented {...asking} />
      <AgeAndDate {...asking} />
    </>
  )
}

function SexAndPresented({ draft, change, missing }: Asking) {
  return (
    <div className="line-of">
      <Stop step="sex">
        <Choice
          label="Sex"
          options={sexOptions}
          value={draft.sex}
          onChange={(sex) => change({ sex })}
          error={missing.sex}
        />
      </Stop>
      <Stop step="presented">
        <Choice
          label="Brought as"
          options={presentedOptions}
          value={draft.presented}
          onChange={(presented) => change({ presented })}
          error={missing.presented}
        />
      </Stop>
    </div>
  )
}

function AgeAndDate({ draft, change, missing, today }: Asking) {
  return (
    <div className="line-of">
      <Stop step="age">
        <Choice
          label="Age class"
          options={ageOptions}
          value={draft.age}
          onChange={(age) => change({ age })}
          error={missing.age}
        />
      </Stop>
      <HarvestDate
        date={draft.harvested}
        time={draft.harvestedAt}
        today={today}
        error={missing.harvested}
        onChange={(harvested) => change({ harvested })}
        onTime={(harvestedAt) => change({ harvestedAt })}
      />
    </div>
  )
}
