import { useEffect, useRef, useState } from 'react'
import type { StationCloseView, StationDay } from '../../shared-types/views/station-close.ts'
import { go } from '../desk/place.ts'
import { useAsk, useMay, useTell } from '../desk/use-desk.ts'
import { OpenLedgers } from '../ledgers/open-ledgers.tsx'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Empty } from '../parts/empty.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Time } from '../parts/time.tsx'
import { formatDate } from '../parts/zoned-time.ts'
import { sayDone } from '../scanner/strip.ts'
import './close-screen.css'
import { InTheWay } from './in-the-way.tsx'
import { Signatures } from './signatures.tsx'
import { StationDesks } from './station-desks.tsx'
import { StationItems } from './station-items.tsx'
import './station-close.css'
import { Totals } from './totals.tsx'
import { useStationCloseSheet } from './use-close-sheet.ts'

type DayChosen = Pick<StationDay, 'station' | 'date'>
const keyOf = ({ station, date }: DayChosen) => `${station} ${date}`

/** The close of a station over the merged log: its desks' closes, what is left over them, two signatures. */
export function StationClose() {
  const [chosen, setChosen] = useState<DayChosen>()
  const { data, refusal } = useAsk('stationClose', chosen ?? {})
  const day = data?.day
  return (
    <div className="close">
      <h1>
        Close the station
        {day && (
          <span className="close-date">
            {day.name} ({day.station}), {formatDate(day.date)}
          </span>
        )}
        <OpenLedgers first="kits" />
      </h1>
      <RefusalNote refusal={refusal} />
      {data && !day && (
        <Empty
          say="No station in this record has opened a day."
          next="Put the record away on the discrepancies screen (F12), and merge the desks’ logs."
        />
      )}
      {data && data.days.length > 1 && (
        <Choice
          label="Which day of which station?"
          options={data.days.slice(0, 9).map((each, place) => ({
            value: keyOf(each),
            label: `${each.name}, ${formatDate(each.date)}`,
            hint: `${each.closed} of ${each.desks} desks closed${each.signed ? ', station signed' : ''}`,
            key: String(place + 1),
          }))}
          value={day ? keyOf(day) : null}
          onChange={(key) => setChosen(data.days.find((each) => keyOf(each) === key))}
          autoFocus
        />
      )}
      {data && day && <Day key={keyOf(day)} close={data} day={day} />}
    </div>
  )
}

function Day({ close, day }: { close: StationCloseView; day: StationDay }) {
  const room = useRef<HTMLDivElement>(null)
  const openSheet = useStationCloseSheet()
  const { station, date } = day
  const isSigned = close.signed !== null && !close.signed.outdated
  useEffect(() => {
    // Whoever has just signed stands at the foot of the list.
    if (isSigned) room.current?.scrollIntoView({ block: 'start' })
  }, [isSigned])
  function toTheWay() {
    room.current?.scrollIntoView({ block: 'start' })
    room.current?.querySelector<HTMLButtonElement>('.close-needs button')?.focus()
  }
  return (
    <div className="close-day" ref={room}>
      {close.signed && <Signed signed={close.signed} />}
      {isSigned || (
        <InTheWay needs={close.open} between={[]} onHere={() => toFirstVariance(room.current)} />
      )}
      {close.unsettled > 0 && (
        <Notice kind="warn">
          <p>
            {close.unsettled} {close.unsettled === 1 ? 'discrepancy' : 'discrepancies'} of the
            record
            {close.unsettled === 1 ? ' is' : ' are'} not settled. The sheet says so.
          </p>
          <Button keyHint="F12" onPress={() => go('discrepancies')}>
            Settle them first
          </Button>
        </Notice>
      )}
      <div className="row">
        <Button
          keyHint="Alt+P"
          kind={isSigned ? 'main' : 'quiet'}
          autoFocus={isSigned}
          onPress={() => void openSheet({ station, date })}
        >
          Open the station close sheet
        </Button>
      </div>
      <StationDesks desks={close.desks} />
      <StationItems items={close.items} day={day} isSigned={isSigned} />
      {close.totals && <Totals totals={close.totals} />}
      <Sign close={close} day={day} onTooEarly={toTheWay} />
    </div>
  )
}

/** The first variance without a reason, or the desk that is still open. */
function toFirstVariance(room: HTMLElement | null): void {
  const place =
    room?.querySelector<HTMLElement>('.close-explain input') ??
    room?.querySelector<HTMLElement>('[data-explain]') ??
    room?.querySelector<HTMLElement>('.station-desks')
  place?.scrollIntoView({ block: 'center' })
  place?.focus()
}

function Signed({ signed }: { signed: NonNullable<StationCloseView['signed']> }) {
  const by = signed.second
    ? `${signed.lead} and ${signed.second}`
    : `${signed.lead} alone${signed.aloneBecause && ` (${signed.aloneBecause})`}`
  return (
    <Notice kind={signed.outdated ? 'warn' : 'good'}>
      <p>
        <b>
          {signed.outdated ? 'A desk has changed since this was signed.' : 'The station is closed.'}
        </b>{' '}
        Signed by {by}, <Time ms={signed.ms} />.{signed.outdated && ' Look it over and sign again.'}
      </p>
    </Notice>
  )
}

function Sign(props: { close: StationCloseView; day: StationDay; onTooEarly: () => void }) {
  const { close, day, onTooEarly } = props
  const maySign = useMay('station.close')
  const { tell, busy, refusal } = useTell('station.close')
  const openSheet = useStationCloseSheet()
  const of = { station: day.station, date: day.date }
  if (close.signed && !close.signed.outdated) return null
  if (!maySign)
    return (
      <Panel title="Signatures">
        <Notice kind="info">Only a lead of the office signs. Change person (Ctrl+L).</Notice>
      </Panel>
    )
  return (
    <Signatures
      deed="Sign and close the station"
      second={close.second}
      open={close.open}
      isHere={close.open.length === 0 && close.days.length === 1}
      busy={busy}
      refusal={refusal}
      onTooEarly={onTooEarly}
      onSign={async (signing) => {
        const answer = await tell({ ...of, ...signing })
        if (answer.ok) {
          sayDone('The station is closed and signed.')
          await openSheet(of)
        }
        return answer
      }}
    />
  )
}
