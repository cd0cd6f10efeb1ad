import { varianceWords } from '../../shared-types/close.ts'
import type { CloseItem } from '../../shared-types/views/close.ts'
import { useTell } from '../desk/use-desk.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { Causes } from './causes.tsx'
import { stepName } from './next-step.ts'
import { ReasonForm } from './reason-form.tsx'
import { reasonsFor } from './reasons.ts'

/** Why a count of this desk differs, with what the log suggests. */
export function ExplainForm(props: { item: CloseItem; onDone: () => void }) {
  const { item, onDone } = props
  const { tell, busy, refusal } = useTell('variance.explain')
  return (
    <ReasonForm
      about={item.words}
      step={stepName({ at: 'explain', key: item.key })}
      reasons={reasonsFor(item.item.of, item.variance ?? 0)}
      given={item.explained}
      busy={busy}
      refusal={refusal}
      onKeep={async (reason, words) => {
        const answer = await tell({ item: item.item, reason, words })
        if (!answer.ok) return sayRefused(answer.refusal)
        sayDone(`${item.words}: ${varianceWords[reason]}.`)
        onDone()
      }}
    >
      <Causes causes={item.causes} keys={{ look: 'Alt+L', settle: 'Alt+Y' }} onSettled={onDone} />
    </ReasonForm>
  )
}
