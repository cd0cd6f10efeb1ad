import type { CoolerNumber } from '../../shared-types/sample-number.ts'
import { keepingWords } from '../../shared-types/station.ts'
import type { CoolerView } from '../../shared-types/views/coolers.ts'
import { useMay } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice, type ChoiceOption } from '../parts/choice.tsx'
import { Empty } from '../parts/empty.tsx'
import { Panel } from '../parts/panel.tsx'
import { CoolerStateBadge } from './cooler-state.tsx'

/** All coolers of the log; the picked one is being filled or looked into. */
export function CoolerList(props: {
  coolers: readonly CoolerView[]
  picked: CoolerNumber | undefined
  onPick: (cooler: CoolerNumber) => void
  /** The person is done choosing. */
  onSettle: () => void
  onOpen: () => void
}) {
  const mayOpen = useMay('cooler.open')
  return (
    <Panel title="Coolers">
      <Button
        keyHint="Alt+A"
        onPress={props.onOpen}
        isDisabled={!mayOpen}
        why="a sampler or the lead opens coolers"
      >
        Open a cooler
      </Button>
      {props.coolers.length === 0 && (
        <Empty say="No cooler is open yet." next="Open one and stick its label on." />
      )}
      {props.coolers.length > 0 && (
        <div className="coolers-choice">
          <Choice
            label="Scan a label, or arrows"
            options={props.coolers.map(toOption)}
            value={props.picked ?? null}
            onChange={props.onPick}
            onSettle={props.onSettle}
          />
        </div>
      )}
    </Panel>
  )
}

function toOption(cooler: CoolerView): ChoiceOption<CoolerNumber> {
  return {
    value: cooler.cooler,
    label: (
      <span className="coolers-option">
        <span>{cooler.name}</span>
        <span className="numbers">{cooler.bags}</span>
      </span>
    ),
    hint: (
      <>
        {keepingWords[cooler.keeping]} <CoolerStateBadge cooler={cooler} />
      </>
    ),
  }
}
