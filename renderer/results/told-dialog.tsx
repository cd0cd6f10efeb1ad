import { useState } from 'react'
import { ToldBy, toldByWords } from '../../shared-types/laboratory-result.ts'
import { LocalDate } from '../../shared-types/local-date.ts'
import { type AnimalNumber, grouped } from '../../shared-types/sample-number.ts'
import { useTell, useWho } from '../desk/use-desk.ts'
import { Choice } from '../parts/choice.tsx'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone } from '../scanner/strip.ts'

/** That hunters were told: how, on which day, by whoever is signed in. */
export function ToldDialog(props: {
  animals: readonly AnimalNumber[]
  isDetected: boolean
  onClose: () => void
}) {
  const { animals, isDetected, onClose } = props
  const today = useWho()?.today ?? ''
  const { tell, busy, refusal } = useTell('hunter.tell')
  const [how, setHow] = useState<ToldBy>(isDetected ? 'phone' : 'letter')
  const [on, setOn] = useState<string>(today)
  const [words, setWords] = useState('')
  const day = LocalDate.safeParse(on)
  const ways = ToldBy.options.filter((each) => !isDetected || each !== 'look-up')
  async function record() {
    if (!day.success) return
    const told = await tell({ animals: [...animals], how, on: day.data, words })
    if (!told.ok) return
    sayDone(`Recorded: ${told.value.told} told ${toldByWords[how]}.`)
    onClose()
  }
  const [first] = animals
  return (
    <DeedDialog
      title={
        animals.length === 1 && first ? `Told about ${grouped(first)}` : `${animals.length} told`
      }
      deed="Record it"
      isBusy={busy}
      refusal={refusal}
      fields={['on']}
      onDo={record}
      onClose={onClose}
    >
      <Choice<ToldBy>
        label="How"
        autoFocus
        options={ways.map((value, at) => ({
          value,
          label: toldByWords[value],
          key: 'abcde'[at],
        }))}
        value={how}
        onChange={setHow}
      />
      <TextEntry
        label="On"
        type="date"
        numbers
        value={on}
        error={day.success ? saidAt(refusal, 'on') : 'Choose a day.'}
        onChange={setOn}
      />
      <TextEntry
        label="In a few words, if need be"
        hint="No name and no phone number: this stays in the log for ever."
        value={words}
        onChange={setWords}
        maxLength={200}
      />
    </DeedDialog>
  )
}
