import { useState } from 'react'
import type { DateOrder, LoggerReading, TemperatureUnit } from '../../shared-types/readings-file.ts'
import type { CoolerView } from '../../shared-types/views/coolers.ts'
import type { LoggerLookView } from '../../shared-types/views/cold.ts'
import { useAsk, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Field } from '../parts/field.tsx'
import { FileEntry, textOf } from '../parts/file-entry.tsx'
import { Notice } from '../parts/notice.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { Time, useZone } from '../parts/time.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { bothScales } from './temperature.ts'

const zones = Intl.supportedValuesOf('timeZone')

/** What a person has said of the file so far; what is null is still to be asked. */
interface Said {
  readonly timeColumn: string | null
  readonly temperatureColumn: string | null
  readonly dateOrder: DateOrder | null
  readonly unit: TemperatureUnit | null
  readonly zone: string
}

function readingOf({ timeColumn, temperatureColumn, dateOrder, unit, zone }: Said) {
  if (timeColumn === null || temperatureColumn === null || !dateOrder || !unit) return undefined
  const reading: LoggerReading = {
    timeColumn: Number(timeColumn),
    temperatureColumn: Number(temperatureColumn),
    skipLines: 0,
    dateOrder,
    unit,
    zone: zone as LoggerReading['zone'],
  }
  return reading
}

/** A logger's readings are taken in: the person says which column is what, in which unit and zone. */
export function LoggerDialog(props: { cooler: CoolerView; onClose: () => void }) {
  const [file, setFile] = useState<{ name: string; text: string }>()
  return (
    <Dialog title={`Logger of ${props.cooler.name}`} onClose={props.onClose}>
      <div className="stack">
        <FileEntry
          label="The logger’s file (CSV)"
          accept=".csv,.txt,.tsv"
          onFile={(taken) => setFile({ name: taken.name, text: textOf(taken) })}
        />
        <Pasted onText={(text) => setFile({ name: 'pasted', text })} />
        {file && <Mapping {...props} key={`${file.name} ${file.text.length}`} file={file} />}
      </div>
    </Dialog>
  )
}

function Pasted(props: { onText: (text: string) => void }) {
  return (
    <Field label="Or paste its lines here">
      {(ids) => (
        <textarea
          {...ids}
          className="entry entry-long"
          rows={3}
          onChange={(event) => props.onText(event.target.value)}
        />
      )}
    </Field>
  )
}

function Mapping(props: {
  cooler: CoolerView
  file: { name: string; text: string }
  onClose: () => void
}) {
  const { cooler, file, onClose } = props
  const here = useZone()
  const [said, setSaid] = useState<Said>({
    timeColumn: null,
    temperatureColumn: null,
    dateOrder: null,
    unit: null,
    zone: here,
  })
  const { data: look, refusal } = useAsk(
    'logger.look',
    { text: file.text },
    { enabled: file.text !== '' },
  )
  if (look === undefined) return <RefusalNote refusal={refusal} />
  const say = (more: Partial<Said>) => setSaid({ ...said, ...more })
  const columns = Array.from({ length: look.columns }, (_, place) => ({
    value: String(place),
    label: `${place + 1}: ${look.rows.map((row) => row[place]).findLast(Boolean) ?? ''}`,
  }))
  return (
    <>
      <FirstLines look={look} />
      <Choice
        label="Column of the time"
        options={columns}
        value={said.timeColumn}
        onChange={(timeColumn) => say({ timeColumn })}
      />
      <Choice
        label="Column of the temperature"
        options={columns}
        value={said.temperatureColumn}
        onChange={(temperatureColumn) => say({ temperatureColumn })}
      />
      <Choice<TemperatureUnit>
        label="Unit the logger shows"
        options={[
          { value: 'C', label: '°C' },
          { value: 'F', label: '°F' },
        ]}
        value={said.unit}
        onChange={(unit) => say({ unit })}
      />
      <Choice<DateOrder>
        label="How it writes a date"
        options={[
          { value: 'year-month-day', label: '2026-11-14', hint: 'year, month, day' },
          { value: 'month-day-year', label: '11/14/2026', hint: 'month, day, year' },
          { value: 'day-month-year', label: '14.11.2026', hint: 'day, month, year' },
        ]}
        value={said.dateOrder}
        onChange={(dateOrder) => say({ dateOrder })}
      />
      <TextEntry
        label="Time zone of its clock"
        value={said.zone}
        onChange={(zone) => say({ zone })}
        offers={zones}
        hint="UTC, if the logger does not know daylight saving."
        maxLength={60}
      />
      <TakeIn cooler={cooler} file={file} reading={readingOf(said)} onClose={onClose} />
    </>
  )
}

function FirstLines(props: { look: LoggerLookView }) {
  const { rows, lines } = props.look
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- scrolls without holding anything to press
    <div className="logger-lines" role="group" aria-label="First lines of the file" tabIndex={0}>
      <table className="table numbers">
        <caption>First lines, of {lines}</caption>
        <tbody>
          {rows.map((row, place) => (
            <tr key={place}>
              {row.map((cell, column) => (
                <td key={column}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

const unsaid: LoggerReading = {
  timeColumn: 0,
  temperatureColumn: 0,
  skipLines: 0,
  dateOrder: 'year-month-day',
  unit: 'C',
  zone: 'UTC' as LoggerReading['zone'],
}

function TakeIn(props: {
  cooler: CoolerView
  file: { name: string; text: string }
  reading: LoggerReading | undefined
  onClose: () => void
}) {
  const { cooler, file, reading, onClose } = props
  const preview = useAsk(
    'logger.preview',
    { cooler: cooler.cooler, text: file.text, reading: reading ?? unsaid },
    { enabled: reading !== undefined },
  )
  const { tell, busy, refusal } = useTell('logger.import')
  if (reading === undefined)
    return <p>Say which column is what, the unit and the date; then the readings are shown.</p>
  const data = preview.refusal ? undefined : preview.data
  async function take() {
    if (busy || reading === undefined) return
    const answer = await tell({ cooler: cooler.cooler, file: file.name, text: file.text, reading })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`${cooler.name}: ${answer.value.readings} readings of ${file.name} taken in.`)
    onClose()
  }
  return (
    <>
      <RefusalNote refusal={preview.refusal ?? refusal} />
      {data && (
        <Notice kind={data.excursions > 0 || data.gaps.length > 0 ? 'warn' : 'info'}>
          <p>
            {data.readings} readings from <Time ms={data.fromMs} /> to <Time ms={data.toMs} />,{' '}
            {bothScales(data.lowest)} to {bothScales(data.highest)}, {data.excursions} outside the
            limits.
          </p>
          {data.gaps.map((gap) => (
            <p key={gap.fromMs}>
              Gap without readings: <Time ms={gap.fromMs} /> to <Time ms={gap.toMs} />.
            </p>
          ))}
          {data.skippedInAll > 0 && (
            <p>
              {data.skippedInAll} lines hold no reading: {data.skipped.join(', ')}
              {data.skippedInAll > data.skipped.length && ' and more'}.
            </p>
          )}
        </Notice>
      )}
      {data && (
        <div className="row">
          <Button kind="main" keyHint="Alt+K" onPress={() => void take()} isDisabled={busy}>
            Take in {data.readings} readings
          </Button>
        </div>
      )}
    </>
  )
}
