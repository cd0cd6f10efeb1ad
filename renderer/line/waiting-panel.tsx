import type { CallOutput } from '../../shared-types/desk-api.ts'
import type { ForecastView } from '../../shared-types/views/forecast.ts'
import { useMay } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'
import type { LineTask } from './line-screen.tsx'
import type { Roving } from '../parts/use-roving.ts'
import { Suggestion } from './suggestion.tsx'
import { WaitingList } from './waiting-list.tsx'

type Line = CallOutput<'line'>

export interface SidePanelProps {
  line: Line
  now: number
  roving: Roving
  /** The list on the other side, an arrow key away. */
  other: Roving
  onTask: (task: LineTask) => void
}

/** The waiting side; its keys act on the chosen animal. */
export function WaitingPanel(
  props: SidePanelProps & { forecast: ForecastView | undefined; onAhead: () => void },
) {
  const { line, roving, other, onTask } = props
  const mayAssign = useMay('animal.assign')
  const mayLeave = useMay('animal.leave')
  const chosen = line.waiting.find((animal) => animal.animal === roving.chosen)
  const act = (is: LineTask['is']) => chosen && onTask({ is, animal: chosen.animal })
  return (
    <Panel
      title="Waiting"
      count={line.waiting.length}
      actions={
        <>
          <Button
            kind="main"
            keyHint="Enter"
            isDisabled={!mayAssign || chosen === undefined}
            why={mayAssign ? undefined : 'not your role'}
            onPress={() => act('assign')}
          >
            Assign
          </Button>
          <Button keyHint="s" isDisabled={chosen === undefined} onPress={() => act('story')}>
            Story
          </Button>
          <Button
            keyHint="l"
            isDisabled={!mayLeave || chosen === undefined}
            why={mayLeave ? undefined : 'not your role'}
            onPress={() => act('animal.leave')}
          >
            Hunter leaves
          </Button>
          <Button keyHint="d" onPress={props.onAhead}>
            Rest of day
          </Button>
        </>
      }
    >
      <Suggestion suggestions={props.forecast?.suggestions ?? []} />
      <WaitingList
        line={line}
        waits={props.forecast?.waits ?? []}
        now={props.now}
        roving={roving}
        onAside={() => other.focus(other.chosen)}
        onOpen={(animal) => onTask({ is: mayAssign ? 'assign' : 'story', animal: animal.animal })}
      />
    </Panel>
  )
}
