import { type FormEvent, useState } from 'react'
import { fill } from '../../shared-types/fill.ts'
import { PracticeRole, type PracticeSpeed, practiceSpeeds } from '../../shared-types/practice.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone } from '../scanner/strip.ts'
import { keepPracticePin } from '../shelf/practice-pin.ts'
import { practiceWords as words, roleTiles } from './words.ts'

const roles = PracticeRole.options.map((value) => ({ value, ...roleTiles[value] }))
const running = practiceSpeeds.filter((speed) => speed > 0)
const hints: Readonly<Record<number, string>> = words.speedHints
const speeds = running.map((speed) => ({
  value: String(speed),
  label: fill(words.speedTile, { speed }),
  hint: hints[speed],
}))

/** Begins a live morning: the role, the pace, how many animals. */
export function BeginDialog(props: { onClose: () => void }) {
  const [role, setRole] = useState<PracticeRole>('check-in')
  const [speed, setSpeed] = useState('5')
  const [animals, setAnimals] = useState('30')
  const { tell, busy, refusal } = useTell('practice.live')
  const count = Number(animals)
  const isWrong = !/^\d+$/.test(animals.trim()) || count < 5 || count > 120
  async function begin(event: FormEvent) {
    event.preventDefault()
    if (isWrong || busy) return
    const [seed] = crypto.getRandomValues(new Uint16Array(1))
    const chosen = Number(speed) as PracticeSpeed
    const answer = await tell({ role, speed: chosen, animals: count, seed })
    if (!answer.ok) return
    keepPracticePin(answer.value.pin)
    sayDone(fill(words.begun, answer.value))
  }
  return (
    <Dialog title={words.begin} onClose={props.onClose}>
      <form className="stack" onSubmit={(event) => void begin(event)}>
        <Choice label={words.which} options={roles} value={role} onChange={setRole} autoFocus />
        <Choice label={words.speed} options={speeds} value={speed} onChange={setSpeed} />
        <TextEntry
          label={words.cars}
          value={animals}
          onChange={setAnimals}
          inputMode="numeric"
          maxLength={3}
          error={isWrong ? words.carsError : undefined}
        />
        <RefusalNote refusal={refusal} />
        <Button kind="main" type="submit" keyHint="Enter" isDisabled={busy}>
          {busy ? words.starting : words.start}
        </Button>
      </form>
    </Dialog>
  )
}
