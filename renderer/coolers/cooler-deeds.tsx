import type { CommandName } from '../../shared-types/desk-api.ts'
import type { CoolerView } from '../../shared-types/views/coolers.ts'
import { useMay } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { PrintLabel } from './print-label.tsx'

/** What can be done with a cooler as a whole. */
export type CoolerDeed = 'read' | 'logger' | 'ice' | 'keep' | 'seal' | 'break'

/** The deeds that a cooler allows now, each with its key. */
export function CoolerDeeds(props: { cooler: CoolerView; onPick: (deed: CoolerDeed) => void }) {
  const { cooler, onPick } = props
  const isHere = cooler.state !== 'handed-off'
  return (
    <>
      {isHere && (
        <Deed
          keyHint="Alt+T"
          command="cooler.read"
          why="the crew reads temperatures"
          onPress={() => onPick('read')}
        >
          Temperature
        </Deed>
      )}
      {cooler.state === 'open' && (
        <Deed
          keyHint="Alt+C"
          command="cooler.seal"
          why="a sampler or the lead seals"
          onPress={() => onPick('seal')}
        >
          Seal
        </Deed>
      )}
      {cooler.state === 'sealed' && (
        <Deed
          keyHint="Alt+B"
          command="seal.break"
          why="only the lead breaks a seal"
          onPress={() => onPick('break')}
        >
          Break the seal
        </Deed>
      )}
      {isHere && (
        <Deed
          keyHint="Alt+Q"
          command="cooler.keep"
          why="the crew says where it is kept"
          onPress={() => onPick('keep')}
        >
          Lock it up
        </Deed>
      )}
      <Deed
        keyHint="Alt+I"
        command="logger.import"
        why="the crew takes readings in"
        onPress={() => onPick('logger')}
      >
        Logger file
      </Deed>
      {isHere && cooler.keeping === 'chilled' && (
        <Button keyHint="Alt+Y" onPress={() => onPick('ice')}>
          Ice
        </Button>
      )}
      {isHere && <PrintLabel cooler={cooler} />}
    </>
  )
}

function Deed(props: {
  keyHint: string
  command: CommandName
  /** Said to a role that may not do it. */
  why: string
  onPress: () => void
  children: string
}) {
  const may = useMay(props.command)
  return (
    <Button keyHint={props.keyHint} onPress={props.onPress} isDisabled={!may} why={props.why}>
      {props.children}
    </Button>
  )
}
