import { useState } from 'react'
import { grouped } from '../../shared-types/sample-number.ts'
import type { WhoView } from '../../shared-types/views/people.ts'
import { useWho } from '../desk/use-desk.ts'
import { sayDone } from '../scanner/strip.ts'
import { type CheckedIn, CheckInForm } from './check-in-form.tsx'
import './check-in.css'
import { CheckedInView } from './checked-in.tsx'
import { useDraft } from './kept-draft.ts'

/** Checking in hunters and their animals, one after another. */
export function CheckInScreen() {
  const who = useWho()
  return (
    <div className="check-in">
      <h1 className="unseen">Check-in</h1>
      {who && <CheckIn key={`${who.station.desk} ${who.today}`} who={who} />}
    </div>
  )
}

function CheckIn({ who }: { readonly who: WhoView }) {
  const hold = useDraft(who.station.desk, who.today)
  const [done, setDone] = useState<CheckedIn>()
  if (done)
    return (
      <CheckedInView
        done={done}
        askForResult={who.settings.askForResult}
        onNext={() => setDone(undefined)}
      />
    )
  return (
    <CheckInForm
      who={who}
      hold={hold}
      onCheckedIn={(value) => {
        hold.begin()
        setDone(value)
        sayDone(`${grouped(value.animal)} is in the log.`)
      }}
    />
  )
}
