import { useState } from 'react'
import {
  BagNumber,
  type CoolerNumber,
  grouped,
  readNumberFor,
} from '../../shared-types/sample-number.ts'
import type { ManifestCheckView } from '../../shared-types/views/custody.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { FileEntry, textOf } from '../parts/file-entry.tsx'
import { NumberEntry } from '../parts/number-entry.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Table } from '../parts/table.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { useScan } from '../scanner/scans.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { CountFile } from './count-file.tsx'
import { Seals, type SealsRead } from './seals.tsx'
import { type Count, compared, damaged, nothingFound, scanned } from './counting.ts'

type ListedBag = ManifestCheckView['bags'][number]

/** Every bag out of the coolers, scanned against the list: what is missing, what is on no list. */
export function CounterScan(props: { check: ManifestCheckView; onDone: () => void }) {
  const { check, onDone } = props
  const [count, setCount] = useState<Count>(nothingFound)
  const [last, setLast] = useState<BagNumber>()
  const [seals, setSeals] = useState<SealsRead>(new Map())
  const listed = new Set<string>(check.bags.map(({ bag }) => bag))
  function take(text: string) {
    const read = readNumberFor(['L', 'R', 'X'], text)
    if (!read.ok) return sayRefused(read.refusal)
    const bag = BagNumber.parse(read.value)
    const result = scanned(count, listed, bag)
    setCount(result.count)
    setLast(bag)
    tellScan(result.is, bag, check.bags)
  }
  useScan(take)
  const { missing, extra } = compared(count, check.bags)
  function readSeal(cooler: CoolerNumber, seal: string) {
    const others = [...seals].filter(([each]) => each !== cooler)
    setSeals(new Map(seal === '' ? others : [...others, [cooler, seal]]))
  }
  return (
    <>
      <Seals coolers={check.coolers} seals={seals} onRead={readSeal} />
      <Panel title="3. Count the bags" note={`${count.found.length} of ${check.bags.length}`}>
        <NumberEntry label="Scan every bag, or type its number" onNumber={take} autoFocus />
        <Extras extra={extra} />
        {last && (
          <Damage key={last} bag={last} onSay={(words) => setCount(damaged(count, last, words))} />
        )}
        <Missing missing={missing} />
      </Panel>
      <Report check={check} count={count} seals={seals} onDone={onDone} />
    </>
  )
}

function tellScan(
  is: 'good' | 'extra' | 'twice',
  bag: BagNumber,
  listed: readonly ListedBag[],
): void {
  const row = listed.find((each) => each.bag === bag)
  if (is === 'good')
    return sayDone(`${grouped(bag)}: on the list, ${row?.side ?? ''}, cooler ${row?.cooler ?? ''}.`)
  sayRefused(
    is === 'twice'
      ? {
          say: `${grouped(bag)} was counted before.`,
          next: 'If two bags carry this number, put both aside and call the station.',
        }
      : {
          say: `${grouped(bag)} is not on this manifest.`,
          next: 'Put it aside: it was swapped, or belongs to another delivery. Call the station.',
        },
  )
}

function Damage(props: { bag: BagNumber; onSay: (words: string) => void }) {
  const [words, setWords] = useState('')
  return (
    <TextEntry
      label={`What is wrong with ${grouped(props.bag)}, if anything`}
      hint="Leaking, torn, thawed. Gloves on; wash your hands afterwards."
      value={words}
      onChange={(text) => {
        setWords(text)
        props.onSay(text.trim())
      }}
      maxLength={120}
    />
  )
}

function Extras(props: { extra: Count['found'] }) {
  if (props.extra.length === 0) return null
  return (
    <ul aria-label="On no list">
      {props.extra.map(({ bag }) => (
        <li key={bag}>
          <NumberText number={bag} /> <Badge shape="now">not on this manifest</Badge>
        </li>
      ))}
    </ul>
  )
}

/** The most rows shown: whoever has counted down to these is looking for them. */
const mostShown = 50

function Missing(props: { missing: readonly ListedBag[] }) {
  const { missing } = props
  if (missing.length === 0) return <Badge shape="fine">every bag of the list was found</Badge>
  return (
    <>
      <h3>Not found yet: {missing.length}</h3>
      <Table
        caption="Bags of the list not found yet"
        columns={[
          { head: 'Bag', cell: ({ bag }) => <NumberText number={bag} /> },
          { head: 'Tissue', cell: ({ side }) => side },
          { head: 'Cooler', cell: ({ cooler }) => cooler },
        ]}
        rows={missing.slice(0, mostShown)}
        rowKey={({ bag }) => bag}
      />
    </>
  )
}

/** What was counted goes into the log, so that what differs is looked into. */
function Report(props: {
  check: ManifestCheckView
  count: Count
  seals: SealsRead
  onDone: () => void
}) {
  const { check, count, seals, onDone } = props
  const [file, setFile] = useState<{ name: string; text: string }>()
  const may = useMay('receipt.count')
  const [receivedBy, setReceivedBy] = useState('')
  const { tell, busy, refusal } = useTell('receipt.count')
  const { handoff } = check
  if (check.state === 'not-in-this-log' || handoff === null) return null
  async function report(counted: Parameters<typeof tell>[0]['counted']) {
    if (busy || handoff === null) return
    const answer = await tell({ handoff, receivedBy, counted })
    setFile(undefined)
    if (!answer.ok) return sayRefused(answer.refusal)
    const { findings } = answer.value
    sayDone(
      findings.length === 0
        ? 'Counted: everything arrived as handed over.'
        : `Counted: ${findings.length} differences, each a discrepancy to be settled.`,
    )
    onDone()
  }
  return (
    <Panel title="4. Report the count">
      <TextEntry
        label="Received by (laboratory or courier)"
        value={receivedBy}
        onChange={setReceivedBy}
        maxLength={80}
      />
      <RefusalNote refusal={refusal} />
      <div className="row">
        <Button
          kind="main"
          keyHint="Alt+K"
          isDisabled={!may || busy || receivedBy.trim().length < 2}
          why={may ? 'say who received it' : 'the lead or the office reports'}
          onPress={() =>
            void report({
              how: 'scanned',
              bags: [...count.found],
              coolers: [...seals].map(([cooler, seal]) => ({ cooler, seal, celsius: null })),
            })
          }
        >
          Report what was scanned
        </Button>
      </div>
      <FileEntry
        label="Or the count that came back as a file"
        hint="One bag a line; you say which column is what. Say first who received it."
        accept=".csv,.txt"
        onFile={(taken) => setFile({ name: taken.name, text: textOf(taken) })}
      />
      {file && (
        <CountFile
          file={file}
          busy={busy}
          onClose={() => setFile(undefined)}
          onSaid={(columns) => void report({ how: 'file', ...file, columns })}
        />
      )}
    </Panel>
  )
}
