import type { SuggestionView } from '../../shared-types/views/forecast.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import './suggestion.css'
import { calledNumber } from './words.ts'

/** Who works which animal next, and why in one sentence; one key takes it, one sets it aside. */
export function Suggestion(props: { suggestions: readonly SuggestionView[] }) {
  const [first, ...others] = props.suggestions
  const assign = useTell('animal.assign')
  const setAside = useTell('suggestion.setAside')
  const mayAssign = useMay('animal.assign')
  const maySetAside = useMay('suggestion.setAside')
  if (!first) return null
  const { animal, sampler, name, why } = first
  const isBusy = assign.busy || setAside.busy
  async function take() {
    const answer = await assign.tell({ animal, sampler })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`${calledNumber(animal)} is with ${name}.`)
  }
  async function putAside() {
    const answer = await setAside.tell({ animal, sampler })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`${calledNumber(animal)} is not suggested to ${name} again.`)
  }
  return (
    <section className="suggestion" aria-label="Suggested next">
      <p>
        <strong>
          Next: <span className="numbers">{calledNumber(animal)}</span> to {name}.
        </strong>{' '}
        {why}
        {others.length > 0 && (
          <span className="suggestion-others">
            {' '}
            Then {others.map((each) => `${calledNumber(each.animal)} to ${each.name}`).join(', ')}.
          </span>
        )}
      </p>
      <div className="row">
        <Button
          keyHint="n"
          isDisabled={!mayAssign || isBusy}
          why={mayAssign ? undefined : 'not your role'}
          onPress={() => void take()}
        >
          Do so
        </Button>
        <Button
          keyHint="x"
          isDisabled={!maySetAside || isBusy}
          why={maySetAside ? undefined : 'not your role'}
          onPress={() => void putAside()}
        >
          Not this
        </Button>
      </div>
    </section>
  )
}
