import { useState } from 'react'
import { nothing, useAsk, useWho } from '../desk/use-desk.ts'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { SafekeepingScreen } from '../safekeeping/safekeeping-screen.tsx'
import { CrewPanel } from './crew-panel.tsx'
import { DayPanel } from './day-panel.tsx'
import { DeskPanel } from './desk-panel.tsx'
import { SettingsForm } from './settings-form.tsx'
import './station-screen.css'

/** The crew, the day, the settings and this desk itself. */
export function StationScreen() {
  const who = useWho()
  const people = useAsk('people', nothing)
  const [inside, setInside] = useState<'settings' | 'safekeeping'>()
  const leave = () => setInside(undefined)
  if (who === undefined || people.data === undefined)
    return <RefusalNote refusal={people.refusal} />
  if (inside === 'settings') return <SettingsForm settings={who.settings} onClose={leave} />
  if (inside === 'safekeeping') return <SafekeepingScreen onClose={leave} />
  return (
    <div className="station">
      <h1 className="unseen">The station</h1>
      <div className="stack">
        <RefusalNote refusal={people.refusal} />
        <CrewPanel people={people.data.people} today={who.today} />
      </div>
      <div className="stack">
        <DayPanel day={who.day} today={who.today} />
        <DeskPanel who={who} onInside={setInside} />
      </div>
    </div>
  )
}
