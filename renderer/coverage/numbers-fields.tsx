import { useState } from 'react'
import { type Species, speciesWords } from '../../shared-types/animal.ts'
import { useAsk } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { FileEntry, textOf } from '../parts/file-entry.tsx'
import { Notice } from '../parts/notice.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { type NumbersDraft, rowKey, withNumbers } from './plan-draft.ts'
import type { PlanFieldsProps } from './plan-view.tsx'

const cells = [
  { cell: 'population', head: 'Animals in the herd', of: 'herd' },
  { cell: 'harvested', head: 'Harvested', of: 'harvested' },
  { cell: 'goal', head: 'Samples to take here', of: 'samples to take' },
] as const

/** The office's numbers of each herd: typed, or taken from a table; what is empty is not known. */
export function NumbersFields({ draft, errors, onChange }: PlanFieldsProps) {
  const change = (row: NumbersDraft) =>
    onChange({
      ...draft,
      numbers: draft.numbers.map((each) => (rowKey(each) === rowKey(row) ? row : each)),
    })
  return (
    <fieldset className="settings-group">
      <legend>Herds, as far as the office knows them; only animals of the ages that count</legend>
      <table className="table coverage-numbers">
        <thead>
          <tr>
            <th scope="col">Unit and species</th>
            {cells.map(({ head }) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {draft.numbers.map((row) => (
            <tr key={rowKey(row)}>
              <th scope="row">
                <b className="numbers">{row.unit}</b> {speciesWords[row.species]}
              </th>
              {cells.map(({ cell, of }) => {
                const error = errors[`${rowKey(row)} ${cell}`]
                return (
                  <td key={cell}>
                    <input
                      className="entry numbers"
                      aria-label={`Unit ${row.unit}, ${speciesWords[row.species]}: ${of}`}
                      aria-invalid={error !== undefined}
                      inputMode="numeric"
                      maxLength={10}
                      autoComplete="off"
                      value={row[cell]}
                      onChange={(event) => change({ ...row, [cell]: event.target.value })}
                    />
                    {error && <p className="field-error">{error}</p>}
                  </td>
                )
              })}
            </tr>
          ))}
        </tbody>
      </table>
      <AddHerd
        onAdd={(row) => {
          const isThere = draft.numbers.some((each) => rowKey(each) === rowKey(row))
          if (!isThere) onChange({ ...draft, numbers: [...draft.numbers, row] })
        }}
      />
      <NumbersFromFile onRead={(read) => onChange(withNumbers(draft, read))} />
    </fieldset>
  )
}

const speciesOptions = (Object.keys(speciesWords) as Species[]).map((value) => ({
  value,
  label: speciesWords[value],
}))

function AddHerd(props: { onAdd: (row: NumbersDraft) => void }) {
  const [unit, setUnit] = useState('')
  const [species, setSpecies] = useState<Species>('mule-deer')
  const code = unit.trim()
  function add() {
    if (code === '') return
    props.onAdd({ unit: code, species, population: '', harvested: '', goal: '' })
    setUnit('')
  }
  return (
    <div className="row coverage-add">
      <TextEntry
        label="One more unit"
        numbers
        maxLength={12}
        value={unit}
        onChange={setUnit}
        onEnter={add}
      />
      <Choice label="Its species" options={speciesOptions} value={species} onChange={setSpecies} />
      <Button keyHint="Alt+U" isDisabled={code === ''} why="give its code first" onPress={add}>
        Add a row
      </Button>
    </div>
  )
}

function NumbersFromFile(props: { onRead: Parameters<typeof FromText>[0]['onRead'] }) {
  const [text, setText] = useState<string>()
  return (
    <>
      <FileEntry
        label="Or take them from a table (CSV)"
        accept=".csv,.txt,.tsv"
        hint="headings: unit, species, population, harvested, goal"
        onFile={(file) => setText(textOf(file))}
      />
      {text !== undefined && <FromText key={text} text={text} onRead={props.onRead} />}
    </>
  )
}

function FromText(props: {
  text: string
  onRead: (numbers: Parameters<typeof withNumbers>[1]) => void
}) {
  const { data, refusal } = useAsk('coverage.readNumbers', { text: props.text })
  const [isTaken, setTaken] = useState(false)
  if (data === undefined) return <RefusalNote refusal={refusal} />
  return (
    <>
      {data.problems.length > 0 && (
        <Notice kind="warn">
          {data.problems.slice(0, 8).map((problem) => (
            <p key={problem}>{problem}</p>
          ))}
        </Notice>
      )}
      {isTaken ? (
        <Notice kind="good">
          {data.numbers.length} rows stand in the table above; set the design to keep them.
        </Notice>
      ) : (
        <div>
          <Button
            keyHint="Alt+R"
            onPress={() => {
              props.onRead(data.numbers)
              setTaken(true)
            }}
          >
            Take {data.numbers.length} rows into the table
          </Button>
        </div>
      )}
    </>
  )
}
