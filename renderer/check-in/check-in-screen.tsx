import { useState } from 'react'
import { grouped } from '../../shared-types/sample-number.ts'
import type { WhoView } from '../../shared-types/views/people.ts'
import { useWho } from '../desk/use-desk.ts'
import { sayDone } from '../scanner/strip.ts'
import { type CheckedIn, CheckInForm } from './check-in-form.tsx'
import './check-in.css'
import { CheckedInView } from './checked-in.tsx'
import type { Draft } from './draft.ts'
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
  const [done, setDone] = useState<{ readonly is: CheckedIn; readonly typed: Draft }>()
  if (done)
    return (
      <CheckedInView
        done={done.is}
        askForResult={who.settings.askForResult}
        onNext={() => setDone(undefined)}
        onCorrect={() => {
          hold.change(done.typed)
          setDone(undefined)
        }}
      />
    )
  return (
    <CheckInForm
      who={who}
      hold={hold}
      onCheckedIn={(value) => {
        hold.begin()
        setDone({ is: value, typed: hold.draft })
        sayDone(`${grouped(value.animal)} is in the log.`)
      }}
    />
  )
}
