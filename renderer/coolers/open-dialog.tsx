import { useState } from 'react'
import { type Keeping, keepingWords } from '../../shared-types/station.ts'
import { useTell } from '../desk/use-desk.ts'
import { Choice } from '../parts/choice.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'
import { chooseCooler } from './use-filling.ts'

const keepings: readonly { value: Keeping; label: string; hint: string; key: string }[] = [
  {
    value: 'chilled',
    label: keepingWords.chilled,
    hint: 'fresh tissue, the hold clock runs',
    key: 'i',
  },
  { value: 'frozen', label: keepingWords.frozen, hint: 'fresh tissue, never formalin', key: 'z' },
  { value: 'room', label: keepingWords.room, hint: 'tissue in formalin', key: 'r' },
]

/** A new cooler gets its name and its number; its label is printed next. */
export function OpenDialog(props: { onClose: () => void }) {
  const { onClose } = props
  const [name, setName] = useState('')
  const [keeping, setKeeping] = useState<Keeping>('chilled')
  const [capacity, setCapacity] = useState('')
  const { tell, busy, refusal } = useTell('cooler.open')

  async function open() {
    const answer = await tell({
      name,
      keeping,
      capacity: capacity === '' ? null : Number(capacity),
    })
    if (!answer.ok) return sayRefused(answer.refusal)
    chooseCooler(answer.value.cooler)
    sayDone(`${name} is open. Print its label (Alt+P) and stick it on.`)
    onClose()
  }
  return (
    <DeedDialog
      title="Open a cooler"
      deed="Open it"
      isBusy={busy}
      refusal={refusal}
      fields={['name', 'keeping', 'capacity']}
      onDo={open}
      onClose={onClose}
    >
      <TextEntry
        label="Name"
        hint="What the crew calls it, such as its colour or the number on its lid."
        value={name}
        onChange={setName}
        error={saidAt(refusal, 'name')}
        autoFocus
        maxLength={40}
      />
      <Choice
        label="How is it kept?"
        options={keepings}
        value={keeping}
        onChange={setKeeping}
        error={saidAt(refusal, 'keeping')}
      />
      <TextEntry
        label="Bags it holds with its ice"
        hint="Leave empty if nobody knows."
        value={capacity}
        onChange={(text) => setCapacity(text.replace(/\D/g, ''))}
        error={saidAt(refusal, 'capacity')}
        inputMode="numeric"
        numbers
        maxLength={4}
      />
    </DeedDialog>
  )
}
