import { useState } from 'react'
import { ageWords, noSampleWords, speciesWords } from '../../shared-types/animal.ts'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import { nothing, useAsk, useTell } from '../desk/use-desk.ts'
import { takeLabels } from '../labels/hand-over.ts'
import { useLabelStock } from '../labels/use-printing.ts'
import { Button } from '../parts/button.tsx'
import { Caution } from '../parts/caution.tsx'
import { Notice } from '../parts/notice.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { openPdf } from '../parts/pdf.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import type { CheckedIn } from './check-in-form.tsx'
import { noteLabelsOwed } from './labels-owed.ts'
import { TakenBack } from './taken-back.tsx'
import { WaitTold } from './wait-told.tsx'

/** The animal is in the log: its number to read from afar, its place in the line, its labels. */
export function CheckedInView(props: {
  done: CheckedIn
  askForResult: string
  onNext: () => void
  /** Taken back: what was typed is offered again. */
  onCorrect: () => void
}) {
  const { animal, noSample, warnings, facts } = props.done
  const now = useAsk('animal', { animal }).data
  if (now?.state === 'struck-out')
    return <TakenBack animal={animal} onCorrect={props.onCorrect} onNext={props.onNext} />
  function next() {
    noteLabelsOwed(now)
    props.onNext()
  }
  return (
    <section className="checked-in" aria-labelledby="checked-in-head" data-keys>
      <h2 id="checked-in-head">Checked in</h2>
      <p className="huge-number">
        <NumberText number={animal} />
      </p>
      <p>
        {speciesWords[facts.species]}, {facts.sex === 'unknown' ? 'sex unknown' : facts.sex},{' '}
        {ageWords[facts.age]} · tag <span className="numbers">{facts.tag.toUpperCase()}</span> ·
        hunter <span className="numbers">{facts.hunter}</span>
      </p>
      {noSample === null ? (
        <>
          <LinePlace animal={animal} />
          {(now === undefined || now.state === 'waiting') && <WaitTold animal={animal} />}
        </>
      ) : (
        <Notice kind="warn">
          <strong>Recorded only: {noSampleWords[noSample]}.</strong> It does not join the line and
          needs no labels.
        </Notice>
      )}
      {warnings.map((warning) => (
        <Notice key={warning} kind="warn">
          {warning}
        </Notice>
      ))}
      <div className="row">
        <Button kind="main" keyHint="Enter" autoFocus onPress={next}>
          Next animal
        </Button>
        {noSample === null && <PrintLabels animal={animal} />}
      </div>
      <TellHunter askForResult={props.askForResult} />
    </section>
  )
}

function LinePlace({ animal }: Pick<CheckedIn, 'animal'>) {
  const line = useAsk('line', nothing).data
  const place = line?.waiting.findIndex((each) => each.animal === animal) ?? -1
  return (
    <p className="line-place" role="status">
      {line && place >= 0 && `Number ${place + 1} of ${line.waiting.length} in the line`}
      {line?.working.some((each) => each.animal === animal) && 'Already with a sampler'}
    </p>
  )
}

/** Prints once: a second press would number a second kit, so it opens the same labels again. */
function PrintLabels({ animal }: Pick<CheckedIn, 'animal'>) {
  const { tell, busy } = useTell('labels.printKits')
  const stock = useLabelStock('kits')
  const [made, setMade] = useState<CallOutput<'labels.printKits'>>()
  async function print() {
    const answer = await tell({ for: { whom: 'animal', animal }, stock })
    if (!answer.ok) return sayRefused(answer.refusal)
    setMade(answer.value)
    sayDone(`Labels made. ${takeLabels(answer.value)}`)
  }
  return (
    <Button
      keyHint="Ctrl+P"
      isDisabled={busy}
      why="being made"
      onPress={() => (made ? openPdf(made.pdf) : void print())}
    >
      {made ? 'Open the labels again' : 'Print labels'}
    </Button>
  )
}

/** Waiting for the result: CDC, cdc.gov/prions/cwd/prevention.html. */
function TellHunter(props: { askForResult: string }) {
  return (
    <Caution title="tell the hunter">
      <p>{props.askForResult}</p>
      <p>
        Keep the meat apart under the tag and wait for the result before eating it. Do not eat meat
        of an animal that tests positive; “not detected” is no promise (CDC). Local health advice
        comes first.
      </p>
    </Caution>
  )
}
