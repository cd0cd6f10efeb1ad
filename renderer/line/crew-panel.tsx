import { useMay } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'
import { CrewList } from './crew-list.tsx'
import type { LineTask } from './line-screen.tsx'
import type { SidePanelProps } from './waiting-panel.tsx'

/** The crew side; its keys act on the animal in the chosen person's hands. */
export function CrewPanel(props: SidePanelProps) {
  const { line, roving, other, onTask } = props
  const mayAssign = useMay('animal.assign')
  const member = line.crew.find((each) => each.person === roving.chosen)
  const animal = member?.animals[0]
  const act = (is: LineTask['is']) => animal && onTask({ is, animal })
  const isOff = !mayAssign || animal === undefined
  const why = mayAssign ? undefined : 'not your role'
  return (
    <Panel
      title="Crew"
      actions={
        <>
          <Button keyHint="Enter" isDisabled={animal === undefined} onPress={() => act('story')}>
            Story
          </Button>
          <Button keyHint="r" isDisabled={isOff} why={why} onPress={() => act('assign')}>
            Reassign
          </Button>
          <Button keyHint="b" isDisabled={isOff} why={why} onPress={() => act('animal.putBack')}>
            Put back
          </Button>
        </>
      }
    >
      <CrewList
        line={line}
        now={props.now}
        roving={roving}
        onAside={() => other.focus(other.chosen)}
        onOpen={(opened) => {
          const inHand = opened.animals[0]
          if (inHand) onTask({ is: 'story', animal: inHand })
        }}
      />
    </Panel>
  )
}
