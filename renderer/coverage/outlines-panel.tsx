import { useState } from 'react'
import { useAsk, useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { FileEntry, textOf } from '../parts/file-entry.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { sayDone } from '../scanner/strip.ts'

/** Outlines of units for the map, out of a GeoJSON file; the person says which property is the code. */
export function OutlinesPanel(props: { known: number }) {
  const mayPlan = useMay('outlines.supply')
  const [file, setFile] = useState<{ name: string; text: string }>()
  return (
    <Panel title="Outlines of units, for the map" note={`${props.known} in this record`}>
      {mayPlan ? (
        <FileEntry
          label="Outlines (GeoJSON)"
          accept=".geojson,.json"
          hint="polygons in longitude and latitude (WGS 84), at most 900,000 characters; drawn, never measured"
          onFile={(taken) => setFile({ name: taken.name, text: textOf(taken) })}
        />
      ) : (
        <p>A station lead or the office supplies them.</p>
      )}
      {file && (
        <Looked
          key={`${file.name} ${file.text.length}`}
          file={file}
          onDone={() => setFile(undefined)}
        />
      )}
    </Panel>
  )
}

function Looked(props: { file: { name: string; text: string }; onDone: () => void }) {
  const { file, onDone } = props
  const look = useAsk('outlines.look', { text: file.text })
  const { tell, busy, refusal } = useTell('outlines.supply')
  const [picked, setPicked] = useState<string>()
  if (look.data === undefined) return <RefusalNote refusal={look.refusal} />
  const { features, properties, problems } = look.data
  const property = picked ?? properties.find(({ fits }) => fits > 0)?.name ?? null
  async function supply() {
    if (property === null || busy) return
    const answer = await tell({ text: file.text, property, file: file.name })
    if (!answer.ok) return
    sayDone(`${answer.value.outlines} outlines of ${file.name} are in the record.`)
    onDone()
  }
  return (
    <div className="stack">
      {problems.length > 0 && (
        <Notice kind="warn">
          {problems.slice(0, 8).map((problem) => (
            <p key={problem}>{problem}</p>
          ))}
        </Notice>
      )}
      <Choice
        label={`Property of the ${features} features in which the unit’s code stands`}
        options={properties.slice(0, 12).map(({ name, fits, examples }) => ({
          value: name,
          label: name,
          hint: `${fits} are units here; ${examples.join(', ')}`,
        }))}
        value={property}
        onChange={setPicked}
      />
      <RefusalNote refusal={refusal} />
      <div>
        <Button
          kind="main"
          keyHint="Alt+O"
          isDisabled={property === null || busy}
          why="choose the property first"
          onPress={() => void supply()}
        >
          Take these outlines
        </Button>
      </div>
    </div>
  )
}
