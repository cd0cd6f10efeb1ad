import { useDeferredValue, useState } from 'react'
import { animalStateWords, speciesWords } from '../../shared-types/animal.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import { useAsk } from '../desk/use-desk.ts'
import { Panel } from '../parts/panel.tsx'
import { Table } from '../parts/table.tsx'
import { TextEntry } from '../parts/text-entry.tsx'

/** Any animal of the record, found while its number, tag or hunter is typed. */
export function FindAnimal() {
  const [text, setText] = useState('')
  const wanted = useDeferredValue(text.trim())
  const { data } = useAsk('find', { text: wanted }, { enabled: wanted !== '' })
  const found = wanted === '' ? [] : (data?.animals ?? [])
  return (
    <Panel title="Find an animal">
      <TextEntry
        label="Beginning of its number, its tag or its hunter"
        value={text}
        onChange={setText}
        numbers
        takesScan
        maxLength={30}
      />
      {wanted !== '' && data && found.length === 0 && <p role="status">No animal begins so.</p>}
      {found.length > 0 && (
        <Table
          caption="Animals found"
          rows={found}
          rowKey={({ animal }) => animal}
          columns={[
            {
              head: 'Animal',
              cell: ({ animal }) => <span className="numbers">{grouped(animal)}</span>,
            },
            { head: 'Tag', cell: ({ tag }) => tag },
            { head: 'Hunter', cell: ({ hunter }) => hunter },
            { head: 'Species', cell: ({ species }) => speciesWords[species] },
            { head: 'State', cell: ({ state }) => animalStateWords[state] },
            { head: 'Desk', cell: ({ desk }) => <span className="numbers">{desk}</span> },
          ]}
        />
      )}
    </Panel>
  )
}
