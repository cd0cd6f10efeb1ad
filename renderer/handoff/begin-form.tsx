import { useState } from 'react'
import { type CoolerNumber, grouped, type HandoffNumber } from '../../shared-types/sample-number.ts'
import { keepingWords } from '../../shared-types/station.ts'
import type { CoolerView } from '../../shared-types/views/coolers.ts'
import type { HandoffView } from '../../shared-types/views/handoff.ts'
import { saidAt, saidElsewhere } from '../parts/said-at.ts'
import { go } from '../desk/place.ts'
import { nothing, useAsk, useMay, useTell, useWho } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice, type ChoiceOption, ManyChoice } from '../parts/choice.tsx'
import { Empty } from '../parts/empty.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'

/** Which sealed coolers go, and where to. */
export function BeginForm(props: { onBegun: (handoff: HandoffNumber) => void }) {
  const coolers = useAsk('coolers', nothing)
  const who = useWho()
  const handoffs = useAsk('handoffs', nothing)
  const sealed = coolers.data?.coolers.filter(({ state }) => state === 'sealed') ?? []
  if (coolers.data === undefined || who === undefined)
    return <RefusalNote refusal={coolers.refusal} />
  if (sealed.length === 0) return <NothingSealed />
  return (
    <ChosenCoolers
      sealed={sealed}
      laboratory={who.settings.laboratory}
      signed={(handoffs.data?.handoffs ?? []).filter(({ state }) => state === 'signed').slice(0, 4)}
      onBegun={props.onBegun}
    />
  )
}

function NothingSealed() {
  return (
    <Empty
      say="No sealed cooler is here to hand over."
      next={
        <Button keyHint="F7" onPress={() => go('coolers')}>
          Seal one on the coolers screen
        </Button>
      }
    />
  )
}

function ChosenCoolers(props: {
  sealed: readonly CoolerView[]
  laboratory: string
  /** Those a further manifest may add to, the latest first. */
  signed: readonly HandoffView[]
  onBegun: (handoff: HandoffNumber) => void
}) {
  const { sealed, laboratory, signed, onBegun } = props
  const mayBegin = useMay('handoff.begin')
  const [staying, setStaying] = useState<readonly CoolerNumber[]>([])
  const [destination, setDestination] = useState(laboratory)
  const [adds, setAdds] = useState<string>('no')
  const { tell, busy, refusal } = useTell('handoff.begin')

  const all = sealed.map(({ cooler }) => cooler)
  const going = all.filter((cooler) => !staying.includes(cooler))
  async function begin() {
    if (busy || !mayBegin) return
    const answer = await tell({
      destination,
      coolers: going,
      supplements: adds === 'no' ? null : adds,
    })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone('Handoff begun. Scan the first cooler.')
    onBegun(answer.value.handoff)
  }
  return (
    <Panel title="1. Which coolers go, and where to">
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          void begin()
        }}
      >
        <ManyChoice
          label="Sealed coolers that go"
          hint="Arrow to one and press Space to leave it here."
          options={sealed.map(toOption)}
          value={going}
          onChange={(picked) => setStaying(all.filter((cooler) => !picked.includes(cooler)))}
          error={saidAt(refusal, 'coolers')}
          autoFocus
        />
        <TextEntry
          label="Destination"
          value={destination}
          onChange={setDestination}
          error={saidAt(refusal, 'destination')}
          maxLength={120}
        />
        {signed.length > 0 && (
          <Choice
            label="Does it add to a manifest that has left?"
            options={[
              { value: 'no', label: 'No, it stands alone' },
              ...signed.map((each) => ({
                value: each.handoff as string,
                label: `Adds to ${grouped(each.handoff)}`,
                hint: `${each.coolers.map(({ name }) => name).join(', ')} for ${each.destination}`,
              })),
            ]}
            value={adds}
            onChange={setAdds}
          />
        )}
        <RefusalNote refusal={saidElsewhere(refusal, ['coolers', 'destination'])} />
        <div className="row">
          <Button
            kind="main"
            type="submit"
            keyHint="Enter"
            isDisabled={busy || !mayBegin}
            why={mayBegin ? 'beginning' : 'only the lead begins a handoff'}
          >
            Begin loading
          </Button>
        </div>
      </form>
    </Panel>
  )
}

function toOption(cooler: CoolerView): ChoiceOption<CoolerNumber> {
  return {
    value: cooler.cooler,
    label: cooler.name,
    hint: `${cooler.bags} bags, ${keepingWords[cooler.keeping]}, seal ${cooler.seal ?? ''}`,
  }
}
