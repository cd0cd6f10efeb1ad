import { useState } from 'react'
import { grouped, readNumberFor, type SampleNumber } from '../../shared-types/sample-number.ts'
import type { HandoffView } from '../../shared-types/views/handoff.ts'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'
import { useTell, useWho } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { NumberEntry } from '../parts/number-entry.tsx'
import { PinEntry } from '../parts/pin-entry.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { useScan } from '../scanner/scans.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'

interface Stroke {
  readonly bag: SampleNumber
  readonly what: 'take-off' | 'add'
}

/** Puts a signed manifest right: what was wrong is struck through and initialled, never erased. */
export function CorrectDialog(props: { handoff: HandoffView; onClose: () => void }) {
  const { handoff, onClose } = props
  const who = useWho()
  const [what, setWhat] = useState<Stroke['what']>('take-off')
  const [cooler, setCooler] = useState<string>(handoff.coolers[0]?.cooler ?? '')
  const [strokes, setStrokes] = useState<readonly Stroke[]>([])
  const [reason, setReason] = useState('')
  const [pin, setPin] = useState('')
  const { tell, busy, refusal } = useTell('handoff.correct')

  function take(text: string) {
    const read = readNumberFor(['L', 'R', 'X'], text)
    if (!read.ok) return sayRefused(read.refusal)
    if (strokes.some(({ bag }) => bag === read.value))
      return sayRefused({
        say: `Bag ${grouped(read.value)} is in the correction already.`,
        next: 'Scan the next bag, or record the correction.',
      })
    setStrokes([...strokes, { bag: read.value, what }])
  }
  useScan(take)
  async function correct() {
    const of = (which: Stroke['what']) =>
      strokes.flatMap((each) => (each.what === which ? [each.bag] : []))
    const answer = await tell({
      handoff: handoff.handoff,
      takeOff: of('take-off'),
      add: of('add').map((bag) => ({ bag, cooler })),
      reason,
      pin,
    })
    setPin('')
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`Corrected: edition ${answer.value.edition} of the manifest. Print it and send it on.`)
    onClose()
  }
  return (
    <DeedDialog
      title={`Correct manifest ${grouped(handoff.handoff)}`}
      deed="Record the correction"
      isBusy={busy}
      refusal={refusal}
      fields={['reason', 'pin']}
      onDo={correct}
      onClose={onClose}
    >
      <Choice<Stroke['what']>
        label="The bag scanned next"
        options={[
          { value: 'take-off', label: 'did not leave: strike it through', key: 's' },
          { value: 'add', label: 'left as well: add it', key: 'a' },
        ]}
        value={what}
        onChange={setWhat}
      />
      {what === 'add' && handoff.coolers.length > 1 && (
        <Choice
          label="In which cooler it left"
          options={handoff.coolers.map((each) => ({
            value: each.cooler as string,
            label: each.name,
          }))}
          value={cooler}
          onChange={setCooler}
        />
      )}
      <NumberEntry label="Scan the bag, or type its number" onNumber={take} autoFocus />
      <ul aria-label="Bags of this correction">
        {strokes.map((stroke) => (
          <li key={stroke.bag} className="row">
            {stroke.what === 'take-off' ? (
              <s>{grouped(stroke.bag)}</s>
            ) : (
              <b>+ {grouped(stroke.bag)}</b>
            )}
            <Button
              label={`Leave out ${stroke.bag}`}
              onPress={() => setStrokes(strokes.filter((each) => each !== stroke))}
            >
              Leave out
            </Button>
          </li>
        ))}
      </ul>
      <TextEntry
        label="Why is it put right?"
        value={reason}
        onChange={setReason}
        error={saidAt(refusal, 'reason')}
        maxLength={200}
      />
      <PinEntry
        label={`PIN of ${who?.person?.name ?? 'the lead'}`}
        value={pin}
        onChange={setPin}
        error={saidAt(refusal, 'pin')}
      />
    </DeedDialog>
  )
}
