import { useState } from 'react'
import { speciesWords } from '../../shared-types/animal.ts'
import {
  type FollowUpStep,
  followUpWords,
  resultWords,
} from '../../shared-types/laboratory-result.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import { siteWords } from '../../shared-types/tissue.ts'
import type { FollowUpView } from '../../shared-types/views/results.ts'
import { nothing, useAsk, useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Caution } from '../parts/caution.tsx'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { Empty } from '../parts/empty.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { Time } from '../parts/time.tsx'
import { useFirstFocus, useRoving } from '../parts/use-roving.ts'
import { sayDone } from '../scanner/strip.ts'
import { ReachText } from './reach-text.tsx'
import { ToldText } from './told-text.tsx'
import { ToldDialog } from './told-dialog.tsx'
import { WordBadge } from './word-badge.tsx'

type Animal = FollowUpView['animals'][number]

/** Detections first: what was done, what is left, and the cautions that go with it. */
export function FollowUp() {
  const { data, refusal } = useAsk('results.followUp', nothing)
  if (data === undefined) return <RefusalNote refusal={refusal} />
  return (
    <>
      <Caution title="a detection">
        {data.cautions.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </Caution>
      <Animals animals={data.animals} />
    </>
  )
}

function Animals({ animals }: { animals: readonly Animal[] }) {
  const roving = useRoving(animals.map(({ animal }) => animal))
  useFirstFocus(roving)
  const shown = animals.find(({ animal }) => animal === roving.chosen)
  const open = animals.filter(({ closed }) => !closed).length
  return (
    <div className="results-doubts">
      <Panel title="To follow up" note={`${open} of ${animals.length} open`}>
        {animals.length === 0 && (
          <Empty
            say="Nothing was detected or presumed so far."
            next="This list fills by itself as results are read in."
          />
        )}
        <ul aria-label="Animals to follow up" className="results-list">
          {animals.map((each) => (
            <li key={each.animal}>
              <button
                {...roving.rowProps(each.animal)}
                type="button"
                className={`results-row${each === shown ? ' results-row-shown' : ''}`}
                aria-current={each === shown}
                onClick={() => roving.focus(each.animal)}
              >
                <span>
                  <NumberText number={each.animal} />
                  <small>
                    {speciesWords[each.species]}, {each.harvested}
                    {each.closed && ', closed'}
                  </small>
                </span>
                <WordBadge word={each.word} />
              </button>
            </li>
          ))}
        </ul>
      </Panel>
      {shown && <AnimalCard key={shown.animal} animal={shown} />}
    </div>
  )
}

const leadOrOffice = 'a lead or the office does this'

function AnimalCard({ animal }: { animal: Animal }) {
  const may = useMay('result.followUp')
  const [step, setStep] = useState<FollowUpStep>()
  const [isTelling, setTelling] = useState(false)
  return (
    <div className="results-card">
      <Panel
        title={grouped(animal.animal)}
        actions={
          <Button
            keyHint="Alt+T"
            isDisabled={!may || animal.heldBack}
            why={may ? 'a row in doubt about it is open: settle it first, press 3' : leadOrOffice}
            onPress={() => setTelling(true)}
          >
            {animal.told && !animal.changedSinceTold ? 'Told again…' : 'Hunter told…'}
          </Button>
        }
      >
        <div className="stack">
          <p>
            <WordBadge word={animal.word} /> {animal.because}
          </p>
          <p>
            Hunter <span className="numbers">{animal.hunter}</span>, tag{' '}
            <span className="numbers">{animal.tag}</span>. <ReachText reach={animal.reach} />
          </p>
          <p>
            Hunter told: <ToldText animal={animal} />
          </p>
          <Reported animal={animal} />
          <ol className="results-steps" data-keys>
            {animal.steps.map(({ step: of, done }, at) => (
              <li key={of}>
                <span>
                  <strong>{followUpWords[of]}</strong>
                  <small>
                    {done ? (
                      <>
                        done: <Time ms={done.ms} />, {done.by}
                        {done.words && `: ${done.words}`}
                      </>
                    ) : (
                      'open'
                    )}
                  </small>
                </span>
                <Button
                  keyHint={String(at + 1)}
                  isDisabled={!may}
                  label={`${done ? 'Again' : 'Done'}: ${followUpWords[of]}`}
                  onPress={() => setStep(of)}
                >
                  {done ? 'Again' : 'Done'}
                </Button>
              </li>
            ))}
          </ol>
        </div>
      </Panel>
      {step && <StepDialog animal={animal} step={step} onClose={() => setStep(undefined)} />}
      {isTelling && (
        <ToldDialog
          animals={[animal.animal]}
          isDetected={animal.word === 'detected'}
          onClose={() => setTelling(false)}
        />
      )}
    </div>
  )
}

/** Each sample with how and when it was tested; what was reported before stays to be seen. */
function Reported({ animal: { samples, earlier } }: { animal: Animal }) {
  return (
    <ul>
      {samples.map(({ bag, site, word, method, tested, laboratory }) => (
        <li key={bag}>
          {siteWords[site]}: <strong>{resultWords[word]}</strong>, {method || 'method not said'},{' '}
          {tested ?? 'day not said'}, {laboratory}
        </li>
      ))}
      {earlier.map(({ bag, word, method, tested, ms }) => (
        <li key={`${bag} ${ms} ${word}`}>
          before: <span className="numbers">{grouped(bag)}</span> {resultWords[word]}, {method},{' '}
          {tested ?? 'day not said'}, read in <Time ms={ms} />
        </li>
      ))}
    </ul>
  )
}

function StepDialog(props: { animal: Animal; step: FollowUpStep; onClose: () => void }) {
  const { animal, step, onClose } = props
  const { tell, busy, refusal } = useTell('result.followUp')
  const [words, setWords] = useState('')
  async function record() {
    const done = await tell({ animal: animal.animal, step, words })
    if (!done.ok) return
    sayDone(`${grouped(animal.animal)}: ${followUpWords[step]}.`)
    onClose()
  }
  return (
    <DeedDialog
      title={followUpWords[step]}
      deed="Record it"
      isBusy={busy}
      refusal={refusal}
      fields={[]}
      onDo={record}
      onClose={onClose}
    >
      <TextEntry
        label="In a few words, if need be"
        hint="No name and no phone number: this stays in the log for ever."
        autoFocus
        value={words}
        onChange={setWords}
        maxLength={200}
      />
    </DeedDialog>
  )
}
