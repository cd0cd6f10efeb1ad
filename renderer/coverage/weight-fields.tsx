import { ageWords, speciesWords } from '../../shared-types/animal.ts'
import { classKey } from '../../shared-types/coverage.ts'
import type { WeightDraft } from './plan-draft.ts'
import type { PlanFieldsProps } from './plan-view.tsx'

const words = ({ species, sex, age }: WeightDraft) =>
  `${speciesWords[species]}, ${ageWords[age]}, ${sex === 'unknown' ? 'sex unknown' : sex}`

/** Weights of classes, for programmes that use them: none is built in, and an empty one counts nothing. */
export function WeightFields({ draft, errors, onChange }: PlanFieldsProps) {
  const change = (changed: WeightDraft) =>
    onChange({
      ...draft,
      weights: draft.weights.map((each) => (classKey(each) === classKey(changed) ? changed : each)),
    })
  const several = draft.weights.filter(({ weight }) => weight !== '').length
  return (
    <details className="settings-group" open={errors.weights !== undefined || undefined}>
      <summary>
        Weights of classes, where the programme uses them (
        {several === 0 ? 'none set' : `${several} set`})
      </summary>
      <p>
        Times the reference class, whose weight is 1. The design prevalence is then that of the
        reference class. A class left empty earns no points.
      </p>
      {errors.weights && <p className="field-error">{errors.weights}</p>}
      <div className="coverage-weights">
        {draft.weights.map((row) => (
          <label key={classKey(row)}>
            <span>{words(row)}</span>
            <input
              className="entry numbers"
              inputMode="decimal"
              maxLength={8}
              autoComplete="off"
              value={row.weight}
              onChange={(event) => change({ ...row, weight: event.target.value })}
            />
          </label>
        ))}
      </div>
    </details>
  )
}
