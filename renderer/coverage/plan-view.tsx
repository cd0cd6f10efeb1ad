import { useState } from 'react'
import type { CoverageView } from '../../shared-types/views/coverage.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { ManyChoice } from '../parts/choice.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone } from '../scanner/strip.ts'
import { NumbersFields } from './numbers-fields.tsx'
import { OutlinesPanel } from './outlines-panel.tsx'
import { type PlanDraft, type PlanErrors, planDraft, readPlan } from './plan-draft.ts'
import { WeightFields } from './weight-fields.tsx'

export interface PlanFieldsProps {
  readonly draft: PlanDraft
  readonly errors: PlanErrors
  readonly onChange: (draft: PlanDraft) => void
}

/** What the office says: what is to be found, in which herds, with which weights, on which map. */
export function PlanView(props: { coverage: CoverageView; onClose: () => void }) {
  const { coverage, onClose } = props
  const [draft, setDraft] = useState(() => planDraft(coverage))
  const [errors, setErrors] = useState<PlanErrors>({})
  const mayPlan = useMay('coverage.plan')
  const { tell, busy, refusal } = useTell('coverage.plan')
  async function save() {
    const read = readPlan(draft)
    setErrors(read.ok ? {} : read.errors)
    if (!read.ok) return
    const answer = await tell({ plan: read.plan })
    if (!answer.ok) return
    sayDone('The design is set. Coverage is judged by it from now on.')
    onClose()
  }
  const fields = { draft, errors, onChange: setDraft }
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- scrolls where it is only for looking
    <div className="coverage-plan" role="group" aria-label="Design and numbers" tabIndex={0}>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          if (mayPlan && !busy) void save()
        }}
      >
        <h1>Design and numbers</h1>
        <DesignFields {...fields} />
        <NumbersFields {...fields} />
        <WeightFields {...fields} />
        <RefusalNote refusal={refusal} />
        <div className="row">
          <Button
            kind="main"
            type="submit"
            keyHint="Alt+K"
            isDisabled={busy || !mayPlan}
            why={mayPlan ? undefined : 'a station lead or the office sets the design'}
          >
            Set the design
          </Button>
          <Button keyHint="Esc" onPress={onClose}>
            Back to the table
          </Button>
        </div>
      </form>
      <OutlinesPanel known={coverage.outlines.length} />
    </div>
  )
}

function DesignFields({ draft, errors, onChange }: PlanFieldsProps) {
  return (
    <fieldset className="settings-group">
      <legend>What the sampling is meant to find</legend>
      <div className="coverage-design">
        <TextEntry
          autoFocus
          label="Design prevalence, %"
          hint="infected animals from which on it should be found"
          inputMode="decimal"
          numbers
          maxLength={8}
          value={draft.prevalence}
          error={errors.prevalence}
          onChange={(prevalence) => onChange({ ...draft, prevalence })}
        />
        <TextEntry
          label="Sensitivity of the test, %"
          hint="infected animals that the test shows, by the laboratory"
          inputMode="decimal"
          numbers
          maxLength={8}
          value={draft.sensitivity}
          error={errors.sensitivity}
          onChange={(sensitivity) => onChange({ ...draft, sensitivity })}
        />
        <TextEntry
          label="Confidence wanted, %"
          hint="95 and 99 are always shown beside it"
          inputMode="decimal"
          numbers
          maxLength={8}
          value={draft.confidence}
          error={errors.confidence}
          onChange={(confidence) => onChange({ ...draft, confidence })}
        />
      </div>
      <ManyChoice
        label="Ages that count toward the target"
        options={[
          { value: 'adult', label: 'adults' },
          { value: 'yearling', label: 'yearlings' },
          { value: 'young', label: 'young of the year' },
        ]}
        value={draft.ages}
        error={errors.ages}
        onChange={(ages) => onChange({ ...draft, ages })}
      />
    </fieldset>
  )
}
