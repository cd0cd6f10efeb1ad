import { useState } from 'react'
import { ResultWord, resultWords } from '../../shared-types/laboratory-result.ts'
import { speciesWords } from '../../shared-types/animal.ts'
import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import type { ResultAnimalView, ResultsView } from '../../shared-types/views/results.ts'
import { useAsk, useMay } from '../desk/use-desk.ts'
import { useFetch } from '../desk/use-fetch.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Empty } from '../parts/empty.tsx'
import { Notice } from '../parts/notice.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { Panel } from '../parts/panel.tsx'
import { openPdf, saveText } from '../parts/pdf.ts'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Table } from '../parts/table.tsx'
import { sayDone } from '../scanner/strip.ts'
import { ReachText } from './reach-text.tsx'
import { ToldText } from './told-text.tsx'
import { ToldDialog } from './told-dialog.tsx'

/** The hunters of one result: letters, mail merge, and that they were told. */
export function Tell({ words }: { words: ResultsView['words'] }) {
  const [word, setWord] = useState<ResultWord>('detected')
  const [whom, setWhom] = useState<'untold' | 'all'>('untold')
  const [from, setFrom] = useState(0)
  const which = { word, untoldOnly: whom === 'untold' }
  const { data, refusal } = useAsk('results.animals', { ...which, from })
  const counts = new Map(words.map((each) => [each.word, each]))
  function show(next: ResultWord, of: 'untold' | 'all') {
    setFrom(0)
    setWord(next)
    setWhom(of)
  }
  return (
    <Panel title="Tell hunters" count={data?.all}>
      <div className="stack">
        <Choice
          label="Whose result is"
          autoFocus
          options={ResultWord.options.map((value, at) => ({
            value,
            label: resultWords[value],
            hint: `${counts.get(value)?.untold ?? 0} to tell of ${counts.get(value)?.animals ?? 0}`,
            key: 'abcde'[at],
          }))}
          value={word}
          onChange={(next) => show(next, whom)}
        />
        <Choice
          label="Show"
          options={[
            { value: 'untold', label: 'those not told yet', key: 'n' },
            { value: 'all', label: 'all of them', key: 'm' },
          ]}
          value={whom}
          onChange={(of) => show(word, of)}
        />
        <RefusalNote refusal={refusal} />
        {data && data.heldBack > 0 && (
          <Notice kind="warn">
            <p>
              In doubt: being settled, {data.heldBack} of {data.all}. They are in no letter and no
              mail merge, and cannot be recorded as told. Settle their rows first: press 3, Rows in
              doubt.
            </p>
          </Notice>
        )}
        <Deeds
          which={which}
          animals={(data?.animals ?? []).filter(({ heldBack }) => !heldBack)}
          all={data ? data.all - data.heldBack : 0}
        />
        {data && <Animals animals={data.animals} />}
        {data && data.all > data.animals.length && (
          <div className="row">
            <span>
              {from + 1} to {from + data.animals.length} of {data.all}
            </span>
            <Button isDisabled={from === 0} onPress={() => setFrom(Math.max(0, from - 100))}>
              Earlier
            </Button>
            <Button isDisabled={from + 100 >= data.all} onPress={() => setFrom(from + 100)}>
              Later
            </Button>
          </div>
        )}
      </div>
    </Panel>
  )
}

interface Which {
  readonly word: ResultWord
  readonly untoldOnly: boolean
}

const leadOrOffice = 'a lead or the office does this'

function Deeds(props: { which: Which; animals: readonly ResultAnimalView[]; all: number }) {
  const { which, animals, all } = props
  const may = useMay('hunter.tell')
  const letters = useFetch('results.letters')
  const merge = useFetch('results.mailMerge')
  const [telling, setTelling] = useState<readonly AnimalNumber[]>()
  const isNone = all === 0
  const why = may ? 'nobody of this list can be told now' : leadOrOffice
  return (
    <>
      <RefusalNote refusal={letters.refusal ?? merge.refusal} />
      <div className="row">
        <Button
          keyHint="Alt+L"
          isDisabled={isNone || !may || letters.busy}
          why={why}
          onPress={() => void letters.fetch(which, openPdf)}
        >
          Letters (PDF)
        </Button>
        <Button
          keyHint="Alt+M"
          isDisabled={isNone || !may || merge.busy}
          why={why}
          onPress={() =>
            void merge.fetch(which, (file) => {
              saveText(file)
              sayDone(`${file.name} is saved. Names are in it: erase it when the letters are out.`)
            })
          }
        >
          Mail merge with names (CSV)
        </Button>
        <Button
          kind="main"
          keyHint="Alt+T"
          isDisabled={animals.length === 0 || !may || which.word === 'pending'}
          why={which.word === 'pending' ? 'there is no result to tell yet' : why}
          onPress={() => setTelling(animals.map(({ animal }) => animal))}
        >
          Record as told ({animals.length})
        </Button>
      </div>
      {telling && (
        <ToldDialog
          animals={telling}
          isDetected={which.word === 'detected'}
          onClose={() => setTelling(undefined)}
        />
      )}
    </>
  )
}

function Animals({ animals }: { animals: readonly ResultAnimalView[] }) {
  const [telling, setTelling] = useState<ResultAnimalView>()
  const may = useMay('hunter.tell')
  if (animals.length === 0)
    return (
      <Empty say="Nobody is on this list." next="Choose another result, or show all of them." />
    )
  return (
    <>
      <Table
        caption="Animals of this result"
        columns={[
          { head: 'Animal', cell: ({ animal }) => <NumberText number={animal} /> },
          {
            head: 'Taken',
            cell: ({ species, harvested, unit }) =>
              `${speciesWords[species]}, ${harvested}${unit && `, unit ${unit}`}`,
          },
          { head: 'Hunter', cell: ({ hunter }) => <span className="numbers">{hunter}</span> },
          { head: 'Contact', cell: ({ reach }) => <ReachText reach={reach} /> },
          { head: 'Told', cell: (each) => <ToldText animal={each} /> },
          {
            head: 'Record',
            cell: (each) => (
              <Button
                isDisabled={!may || each.heldBack || each.word === 'pending'}
                why={each.heldBack ? 'a row in doubt about it is open' : undefined}
                label={`Told… about ${each.animal}`}
                onPress={() => setTelling(each)}
              >
                Told…
              </Button>
            ),
          },
        ]}
        rows={animals}
        rowKey={({ animal }) => animal}
      />
      {telling && (
        <ToldDialog
          animals={[telling.animal]}
          isDetected={telling.word === 'detected'}
          onClose={() => setTelling(undefined)}
        />
      )}
    </>
  )
}
