import { useState } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import type { MergePlace } from '../../shared-types/views/merge.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Empty } from '../parts/empty.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'

type Merge = CallOutput<'merge.look'>

const ending = '.stationlog'
const plain = (file: string) => file.slice(0, -ending.length)

/** Where the logs lie, which of them to merge, and into what. */
export function ChooseFiles(props: { merge: Merge; today: string; onBegun: () => void }) {
  const { places, merged } = props.merge
  const begin = useTell('merge.begin')
  const [wanted, setWanted] = useState<string>()
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
  const [into, setInto] = useState(() => plain(merged[0]?.file ?? '') || `merged-${props.today}`)
  const place = places.find((each) => each.place === wanted) ?? places[0]
  if (place === undefined)
    return (
      <Empty
        say="No station log is here to merge."
        next="Plug in the stick with the logs of the stations, or copy them into this laptop's folder."
      />
    )
  const chosen = place.files.filter(({ file }) => !left.has(`${place.place} ${file}`))
  function turn(file: string) {
    const key = `${place?.place} ${file}`
    setLeft(
      (before) =>
        new Set(before.has(key) ? [...before].filter((each) => each !== key) : [...before, key]),
    )
  }
  return (
    <form
      className="merge-choose"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        const files = chosen.map(({ file }) => file)
        void begin.tell({ place: place.place, files, into }).then(({ ok }) => ok && props.onBegun())
      }}
    >
      <Choice
        label="Where the logs are"
        options={places.map(({ place: value, words, files }, at) => ({
          value,
          label: words,
          hint: `${files.length} ${files.length === 1 ? 'log' : 'logs'}`,
          key: at < 9 ? String(at + 1) : undefined,
        }))}
        value={place.place}
        onChange={setWanted}
        autoFocus
      />
      <FileList
        place={place}
        isChosen={(file) => chosen.some((each) => each.file === file)}
        onTurn={turn}
      />
      <TextEntry
        label="Merged log"
        hint={
          merged.length === 0
            ? 'A new log of this name is made in this laptop’s folder.'
            : 'The name of a merged log goes on with it; any other name makes a new one.'
        }
        value={into}
        onChange={setInto}
        offers={merged.map(({ file }) => plain(file))}
        maxLength={80}
        error={begin.refusal?.field === 'into' ? begin.refusal.say : undefined}
      />
      <RefusalNote refusal={begin.refusal} />
      <Button
        kind="main"
        type="submit"
        keyHint="Enter"
        isDisabled={begin.busy || chosen.length === 0}
        why="choose at least one log"
      >
        {`Merge ${chosen.length} ${chosen.length === 1 ? 'log' : 'logs'}`}
      </Button>
    </form>
  )
}

function FileList(props: {
  place: MergePlace
  isChosen: (file: string) => boolean
  onTurn: (file: string) => void
}) {
  return (
    <Panel title="Logs to merge" count={props.place.files.length} note="Space leaves one out">
      <ul className="merge-files">
        {props.place.files.map(({ file, bytes }) => (
          <li key={file}>
            <label>
              <input
                type="checkbox"
                checked={props.isChosen(file)}
                onChange={() => props.onTurn(file)}
              />
              <span>{file}</span>
              <span className="numbers merge-size">{megabytes(bytes)}</span>
            </label>
          </li>
        ))}
      </ul>
    </Panel>
  )
}

function megabytes(bytes: number): string {
  return `${(bytes / 1_000_000).toFixed(1)} MB`
}
