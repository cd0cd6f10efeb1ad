import { useState } from 'react'
import { useAsk, useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { FileEntry } from '../parts/file-entry.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { type BroughtMark, useBring } from '../results/use-bring.ts'
import { sayDone } from '../scanner/strip.ts'

/** Outlines of units for the map, out of a GeoJSON file; the person says which property is the code. */
export function OutlinesPanel(props: { known: number }) {
  const mayPlan = useMay('outlines.supply')
  const { bring, mark, busy, refusal } = useBring()
  return (
    <Panel title="Outlines of units, for the map" note={`${props.known} in this record`}>
      {mayPlan ? (
        <FileEntry
          label="Outlines (GeoJSON)"
          accept=".geojson,.json"
          hint="polygons in longitude and latitude (WGS 84); drawn, never measured"
          onFile={(file) => void bring(file)}
        />
      ) : (
        <p>A station lead or the office supplies them.</p>
      )}
      {busy && <p role="status">Bringing the file to the desk …</p>}
      <RefusalNote refusal={refusal} />
      {mark && <Looked key={mark.brought} mark={mark} />}
    </Panel>
  )
}

function Looked({ mark }: { mark: BroughtMark }) {
  const { brought } = mark
  const look = useAsk('outlines.look', { brought })
  const { tell, busy, refusal } = useTell('outlines.supply')
  const [picked, setPicked] = useState<string>()
  const [isTaken, setTaken] = useState(false)
  if (isTaken) return null
  if (look.data === undefined) return <RefusalNote refusal={look.refusal} />
  const { features, properties, problems } = look.data
  const property = picked ?? properties.find(({ fits }) => fits > 0)?.name ?? null
  async function supply() {
    if (property === null || busy) return
    const answer = await tell({ brought, property })
    if (!answer.ok) return
    sayDone(`${answer.value.outlines} outlines of ${mark.name} are in the record.`)
    setTaken(true)
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
