import { HeadFault, headFaultWords } from '../../shared-types/animal.ts'
import { ManyChoice } from '../parts/choice.tsx'
import type { Asking } from './asking.ts'
import { Stop } from './stops.tsx'

const faultOptions = HeadFault.options.map((value, place) => ({
  value,
  label: headFaultWords[value],
  key: String(place + 1),
}))

/** What is wrong with the head; with no fault named it is whole. */
export function HeadFields({ draft, change }: Asking) {
  return (
    <Stop step="faults">
      <ManyChoice
        label={draft.faults.length === 0 ? 'Head: whole, unless' : 'Head: not whole'}
        options={faultOptions}
        value={draft.faults}
        onChange={(faults) => change({ faults })}
      />
    </Stop>
  )
}
