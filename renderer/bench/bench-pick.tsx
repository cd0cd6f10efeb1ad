import { useRef, useState } from 'react'
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
  // Arrow keys look through the names; Enter goes to the bench, and only then does the focus go there.
  const [looked, setLooked] = useState<PersonId | null>(null)
  const byArrows = useRef(false)
  const people = useAsk('people', nothing).data?.people.filter(hasBench) ?? []
  return (
    <Field label="Bench of" hint={looked === null ? undefined : 'Enter shows this bench.'}>
      {(ids) => (
        <select
          {...ids}
          className="entry"
          value={looked ?? props.value ?? ''}
          onKeyDown={(event) => {
            byArrows.current = event.key !== 'Enter'
            if (event.key !== 'Enter' || looked === null) return
            event.preventDefault()
            props.onPick(looked)
            setLooked(null)
          }}
          onPointerDown={() => {
            byArrows.current = false
          }}
          onChange={(event) => {
            const picked = people.find(({ person }) => person === event.target.value)?.person
            if (picked === undefined) return
            if (byArrows.current) return setLooked(picked)
            setLooked(null)
            props.onPick(picked)
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
