import { useState } from 'react'
import type { HandoffNumber } from '../../shared-types/sample-number.ts'
import type { HandoffCooler } from '../../shared-types/views/handoff.ts'
import { notATemperature } from '../coolers/read-dialog.tsx'
import { saidAt, saidElsewhere } from '../parts/said-at.ts'
import { TemperatureEntry } from '../coolers/temperature-entry.tsx'
import { readTemperature } from '../coolers/temperature.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'

const fields = ['seal', 'celsius', 'counted', 'words'] as const
type FieldName = (typeof fields)[number]

/**
 * One cooler on its way out: seal, temperature and count as seen now. The log's own seal and count are
 * not shown beside it, so that they are read and not repeated. Enter goes from field to field.
 */
export function ScanOutForm(props: {
  handoff: HandoffNumber
  cooler: HandoffCooler
  onDone: () => void
}) {
  const { handoff, cooler, onDone } = props
  const [seen, setSeen] = useState({ seal: '', celsius: '', counted: '', words: '' })
  const [here, setHere] = useState<FieldName>('seal')
  const [isUnread, setUnread] = useState(false)
  const { tell, busy, refusal } = useTell('cooler.scanOut')
  const change = (field: FieldName) => (text: string) => setSeen({ ...seen, [field]: text })

  async function scanOut(sure = false) {
    const celsius = readTemperature(seen.celsius)
    setUnread(celsius === null)
    if (celsius === null || busy) return
    const { seal, words } = seen
    const answer = await tell({
      handoff,
      cooler: cooler.cooler,
      seal,
      celsius,
      sure,
      counted: Number(seen.counted),
      words,
    })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`${cooler.name} is loaded.`)
    onDone()
  }
  /** To the next field; where that was filled before, this one was only put right. */
  function goOn(next: 'celsius' | 'counted') {
    if (seen[next] === '') setHere(next)
    else void scanOut()
  }
  return (
    <form
      className="handoff-reading stack"
      aria-label={`Reading ${cooler.name}`}
      onSubmit={(event) => {
        event.preventDefault()
        void scanOut()
      }}
    >
      <h3>{cooler.name}: read it as it is now</h3>
      <div className="handoff-fields">
        <TextEntry
          label="Number on the seal"
          hint="As it stands on the seal."
          value={seen.seal}
          onChange={change('seal')}
          onEnter={() => goOn('celsius')}
          error={saidAt(refusal, 'seal')}
          autoFocus={here === 'seal'}
          takesScan
          numbers
          maxLength={20}
        />
        <TemperatureEntry
          value={seen.celsius}
          onChange={change('celsius')}
          onEnter={() => goOn('counted')}
          error={isUnread ? notATemperature : saidAt(refusal, 'celsius')}
          autoFocus={here === 'celsius'}
        />
        <TextEntry
          label="Bags, as written on the lid"
          value={seen.counted}
          onChange={(text) => change('counted')(text.replace(/\D/g, ''))}
          error={saidAt(refusal, 'counted')}
          autoFocus={here === 'counted'}
          inputMode="numeric"
          numbers
          maxLength={4}
        />
        <TextEntry
          label="If the count differs: why"
          hint="Empty when it agrees. The manifest shows it."
          value={seen.words}
          onChange={change('words')}
          error={saidAt(refusal, 'words')}
          maxLength={200}
        />
      </div>
      <RefusalNote refusal={saidElsewhere(refusal, fields)} />
      <div className="row">
        {refusal?.code === 'unit-in-doubt' && (
          <Button keyHint="Alt+C" onPress={() => void scanOut(true)}>
            It is °C: load it so
          </Button>
        )}
        <Button kind="main" type="submit" keyHint="Enter" isDisabled={busy}>
          It is loaded
        </Button>
        <Button onPress={onDone}>Not this one</Button>
      </div>
    </form>
  )
}
