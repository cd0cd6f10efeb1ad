import { useEffect, useRef } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { go } from '../desk/place.ts'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { Time } from '../parts/time.tsx'
import { HandoverForm } from './handover-form.tsx'
import { Tomorrow } from './tomorrow.tsx'
import { Totals } from './totals.tsx'
import { useCloseSheet } from './use-close-sheet.ts'
import { VarianceText } from './variance-text.tsx'

/** A day that is signed: who signed, the sheet, the counts, and where it could be reopened. */
export function ClosedDay(props: { close: CallOutput<'close'>; date: LocalDate }) {
  const { close, date } = props
  const openSheet = useCloseSheet()
  const top = useRef<HTMLDivElement>(null)
  useEffect(() => {
    // Whoever has just signed stands at the foot of the list.
    top.current?.scrollIntoView({ block: 'nearest' })
  }, [])
  return (
    <>
      <div ref={top} className="close-signed">
        <Notice kind="good">
          <p>
            <b>The day is closed.</b>{' '}
            {close.signed && (
              <>
                Signed by {close.signed.lead}
                {close.signed.second
                  ? ` and ${close.signed.second}`
                  : ` alone${close.signed.aloneBecause && ` (${close.signed.aloneBecause})`}`}
                , <Time ms={close.signed.ms} />.
              </>
            )}
          </p>
          <p>Something forgotten? The lead can reopen it, with a reason, on the station screen.</p>
        </Notice>
      </div>
      <div className="row">
        <Button kind="main" keyHint="Alt+P" autoFocus onPress={() => void openSheet({ date })}>
          Open the close sheet
        </Button>
        <Button keyHint="F9" onPress={() => go('handoff')}>
          To the handoff
        </Button>
        <Button keyHint="F10" onPress={() => go('station')}>
          To the station screen
        </Button>
      </div>
      <Tomorrow />
      <HandoverForm date={date} />
      <Totals totals={close.totals} />
      <ul className="close-counts">
        {close.items.map((item) => (
          <li key={item.key} className="close-row close-signed-row">
            <p>
              {item.words}: <b className="numbers">{item.counted}</b>
            </p>
            <VarianceText item={item} />
          </li>
        ))}
      </ul>
    </>
  )
}
