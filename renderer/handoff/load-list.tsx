import type { CoolerNumber } from '../../shared-types/sample-number.ts'
import type { HandoffCooler } from '../../shared-types/views/handoff.ts'
import { bothScales } from '../coolers/temperature.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { Table } from '../parts/table.tsx'

/** The coolers of a handoff and how far each is. Seals and counts show once they were read. */
export function LoadList(props: {
  coolers: readonly HandoffCooler[]
  inHand: CoolerNumber | undefined
  onTake: (cooler: CoolerNumber) => void
}) {
  const { inHand, onTake } = props
  return (
    <Table
      caption="Coolers of this handoff"
      columns={[
        {
          head: 'Cooler',
          cell: ({ name, cooler }) => (
            <>
              {name} <NumberText number={cooler} />
            </>
          ),
        },
        {
          head: 'State',
          cell: (cooler) => <LoadState cooler={cooler} isInHand={cooler.cooler === inHand} />,
        },
        { head: 'As it left', cell: (cooler) => <AsSeen cooler={cooler} /> },
        {
          head: 'By hand',
          cell: ({ cooler, name, scanned }) => (
            <Button
              label={`${scanned ? 'Read again' : 'Read'} ${name}`}
              onPress={() => onTake(cooler)}
            >
              {scanned ? 'Read again' : 'Read'}
            </Button>
          ),
        },
      ]}
      rows={props.coolers}
      rowKey={({ cooler }) => cooler}
    />
  )
}

function LoadState(props: { cooler: HandoffCooler; isInHand: boolean }) {
  const { scanned, bags } = props.cooler
  if (props.isInHand) return <Badge shape="soon">being read</Badge>
  if (scanned === null) return <Badge shape="idle">to load</Badge>
  return scanned.counted === bags ? (
    <Badge shape="fine">loaded</Badge>
  ) : (
    <Badge shape="soon">loaded, count differs</Badge>
  )
}

function AsSeen(props: { cooler: HandoffCooler }) {
  const { scanned, bags } = props.cooler
  if (scanned === null) return 'not read yet'
  return (
    <>
      seal <b className="numbers">{scanned.seal}</b>, {bothScales(scanned.celsius)},{' '}
      <b className="numbers">{scanned.counted}</b> bags
      {scanned.counted !== bags && ` (${bags} by the log: ${scanned.words})`}
    </>
  )
}
