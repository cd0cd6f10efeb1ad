import { useState } from 'react'
import {
  PackingAnswer,
  type PackingStep,
  packingAnswerWords,
  packingSteps,
} from '../../shared-types/transport.ts'
import type { HandoffView } from '../../shared-types/views/handoff.ts'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'
import { useTell } from '../desk/use-desk.ts'
import { Caution } from '../parts/caution.tsx'
import { Choice } from '../parts/choice.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'

const answers = PackingAnswer.options.map((value) => ({ value, label: packingAnswerWords[value] }))

/** The packing steps of the published rules, each answered by a person; the carrier's word goes before. */
export function PackDialog(props: { handoff: HandoffView; onClose: () => void }) {
  const { handoff, onClose } = props
  const [given, setGiven] = useState<Partial<Record<PackingStep, PackingAnswer>>>(() =>
    Object.fromEntries((handoff.packed?.answers ?? []).map(({ step, answer }) => [step, answer])),
  )
  const [dryIce, setDryIce] = useState(handoff.packed?.dryIceKg?.toString() ?? '')
  const [words, setWords] = useState(handoff.packed?.words ?? '')
  const { tell, busy, refusal } = useTell('handoff.pack')

  async function pack() {
    const answer = await tell({
      handoff: handoff.handoff,
      answers: packingSteps.flatMap(({ step }) => {
        const said = given[step]
        return said ? [{ step, answer: said }] : []
      }),
      dryIceKg: dryIce.trim() === '' ? null : Number(dryIce.replace(',', '.')),
      words,
    })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone('Packing checklist recorded.')
    onClose()
  }
  return (
    <DeedDialog
      title="Packing checklist"
      deed="Record the answers"
      isBusy={busy}
      refusal={refusal}
      fields={['dryIceKg', 'words']}
      onDo={pack}
      onClose={onClose}
    >
      <Caution title="a checklist, not the rule">
        It follows published rules for biological specimens in short. What the carrier, the
        laboratory and local rules ask goes before it.
      </Caution>
      {packingSteps.map(({ step, say, source }, place) => (
        <Choice<PackingAnswer>
          key={step}
          label={say}
          hint={`Source: ${source}.`}
          options={answers}
          value={given[step] ?? null}
          onChange={(answer) => setGiven({ ...given, [step]: answer })}
          autoFocus={place === 0}
        />
      ))}
      <TextEntry
        label="Dry ice, net kilograms over all coolers"
        hint="Empty without dry ice. It must vent: never closed airtight, gloves on."
        value={dryIce}
        onChange={setDryIce}
        error={saidAt(refusal, 'dryIceKg')}
        numbers
        maxLength={8}
      />
      <TextEntry
        label="Anything else"
        value={words}
        onChange={setWords}
        error={saidAt(refusal, 'words')}
        maxLength={200}
      />
    </DeedDialog>
  )
}
