import type { PersonId } from '../../shared-types/sample-number.ts'
import type { PersonView } from '../../shared-types/views/people.ts'
import { nothing, useAsk } from '../desk/use-desk.ts'
import { Field } from '../parts/field.tsx'

/** The people who have a bench: those who take samples. */
function hasBench({ active, role }: PersonView): boolean {
  return active && (role === 'sampler' || role === 'lead')
}

/** Whose bench is shown. A sampler has their own; everyone else may look at each. */
export function BenchPick(props: { value: PersonId | null; onPick: (person: PersonId) => void }) {
  const people = useAsk('people', nothing).data?.people.filter(hasBench) ?? []
  return (
    <Field label="Bench of">
      {(ids) => (
        <select
          {...ids}
          className="entry"
          value={props.value ?? ''}
          onChange={(event) => {
            const picked = people.find(({ person }) => person === event.target.value)
            if (picked) props.onPick(picked.person)
          }}
        >
          {props.value === null && <option value="">choose</option>}
          {people.map(({ person, name }) => (
            <option key={person} value={person}>
              {name}
            </option>
          ))}
        </select>
      )}
    </Field>
  )
}
