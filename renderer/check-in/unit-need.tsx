import type { Species } from '../../shared-types/animal.ts'
import { useAsk } from '../desk/use-desk.ts'
import { Shape } from '../parts/shape.tsx'

/** What the unit chosen still needs, so that the samples that matter are taken; silent where none are short. */
export function UnitNeed(props: { unit: string; species: Species | null }) {
  const { species } = props
  const unit = props.unit.trim()
  const { data } = useAsk('coverage.need', { unit, species }, { enabled: unit !== '' })
  const say = unit === '' ? null : (data?.say ?? null)
  return (
    <p className="unit-need" role="status">
      {say !== null && (
        <>
          <Shape kind="soon" /> {say}
        </>
      )}
    </p>
  )
}
