import { useState } from 'react'
import { speciesWords } from '../../shared-types/animal.ts'
import { resultWords } from '../../shared-types/laboratory-result.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import { siteWords } from '../../shared-types/tissue.ts'
import { nothing, useAsk } from '../desk/use-desk.ts'
import { useFetch } from '../desk/use-fetch.ts'
import { Button } from '../parts/button.tsx'
import { NumberEntry } from '../parts/number-entry.tsx'
import { Panel } from '../parts/panel.tsx'
import { saveText } from '../parts/pdf.ts'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { sayDone } from '../scanner/strip.ts'
import { useScan } from '../scanner/scans.ts'
import { WordBadge } from './word-badge.tsx'

/** What a hunter may see who gives an animal number: the result, and no name. */
export function LookUp() {
  const [number, setNumber] = useState<string>()
  useScan(setNumber)
  const list = useFetch('results.lookUpList')
  return (
    <Panel
      title="Look a result up"
      actions={
        <Button
          keyHint="Alt+Y"
          isDisabled={list.busy}
          onPress={() =>
            void list.fetch(nothing, (file) => {
              saveText(file)
              sayDone(`${file.name} is saved. No person is in it.`)
            })
          }
        >
          Save all numbers with results (CSV)
        </Button>
      }
    >
      <div className="stack">
        <NumberEntry
          label="Animal number from the hunter's stub"
          hint="Scan the stub, or type the number and press Enter."
          autoFocus
          onNumber={setNumber}
        />
        <RefusalNote refusal={list.refusal} />
        {number !== undefined && <Answer number={number} />}
      </div>
    </Panel>
  )
}

function Answer({ number }: { number: string }) {
  const { data, refusal } = useAsk('results.lookUp', { animal: number })
  if (refusal || data === undefined) return <RefusalNote refusal={refusal} />
  return (
    <div className="results-answer stack" role="status">
      <h3 className="numbers">{grouped(data.animal)}</h3>
      <p>
        {speciesWords[data.species]}, taken {data.harvested}
      </p>
      {data.word && (
        <p>
          <WordBadge word={data.word} />
        </p>
      )}
      <p>
        <strong>{data.say}</strong>
      </p>
      <p>{data.next}</p>
      <ul>
        {data.samples.map(({ bag, site, word, method, tested }) => (
          <li key={bag}>
            {siteWords[site]}: {resultWords[word]}
            {method && `, ${method}`}
            {tested && `, ${tested}`}
          </li>
        ))}
      </ul>
    </div>
  )
}
