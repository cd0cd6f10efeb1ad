import type { CallOutput } from '../../shared-types/desk-api.ts'
import { go } from '../desk/place.ts'
import { nothing, useAsk, useWho } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Empty } from '../parts/empty.tsx'
import { OpenLedgers } from '../ledgers/open-ledgers.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { formatDate } from '../parts/zoned-time.ts'
import './close-screen.css'
import { ClosedDay } from './closed-day.tsx'
import { OpenDay } from './open-day.tsx'
import { StationClose } from './station-close.tsx'

/** The close: of this desk's day, or of a whole station at the office that merged its desks. */
export function CloseScreen() {
  return useWho()?.station.office ? <StationClose /> : <DeskClose />
}

/** The close of the day: count blind, explain what differs, sign. */
function DeskClose() {
  const { data, refusal } = useAsk('close', nothing)
  return (
    <div className="close">
      <h1>
        Close the day
        {data?.date && <span className="close-date">{formatDate(data.date)}</span>}
        <OpenLedgers first="bags" />
      </h1>
      <RefusalNote refusal={refusal} />
      {data && <Day close={data} />}
    </div>
  )
}

function Day(props: { close: CallOutput<'close'> }) {
  const { close } = props
  if (close.date === null || close.state === 'none')
    return (
      <Empty
        say="No day is open, so there is nothing to close."
        next={
          <Button keyHint="F10" onPress={() => go('station')}>
            Open a day on the station screen
          </Button>
        }
      />
    )
  return close.state === 'closed' ? (
    <ClosedDay close={close} date={close.date} />
  ) : (
    <OpenDay close={close} date={close.date} />
  )
}
