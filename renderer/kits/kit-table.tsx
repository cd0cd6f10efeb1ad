import type { KitState } from '../../shared-types/kit.ts'
import { numberParts } from '../../shared-types/sample-number.ts'
import type { NumberedKit } from '../../shared-types/views/kits.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { NumberText } from '../parts/number-text.tsx'
import type { ShapeKind } from '../parts/shape.tsx'
import { Shape } from '../parts/shape.tsx'
import { type Column, Table } from '../parts/table.tsx'
import { Time } from '../parts/time.tsx'
import { orderLabel } from './label-order.ts'
import { fateShapes, fateWords } from './words.ts'

const stateShapes: Record<KitState, ShapeKind> = {
  reserved: 'soon',
  opened: 'fine',
  spoiled: 'idle',
}

function columns(onOpen: (kit: NumberedKit) => void): Column<NumberedKit>[] {
  return [
    { head: 'Kit', cell: ({ kit }) => <NumberText number={kit} /> },
    {
      head: 'For',
      cell: ({ animal }) => (animal ? <NumberText number={animal} /> : 'whoever comes'),
    },
    { head: 'State', cell: ({ state }) => <Badge shape={stateShapes[state]}>{state}</Badge> },
    { head: 'Its labels', cell: (kit) => <Labels kit={kit} /> },
    { head: 'Made', cell: ({ printedMs }) => <Time ms={printedMs} /> },
    {
      head: 'More',
      cell: (kit) => (
        <Button label={`Open kit ${numberParts(kit.kit).serial}`} onPress={() => onOpen(kit)}>
          Open
        </Button>
      ),
    },
  ]
}

/** Each label as its part letter and the shape of its fate; the words for those who listen. */
function Labels({ kit }: { readonly kit: NumberedKit }) {
  return (
    <ul className="label-fates">
      {kit.labels.toSorted(orderLabel).map(({ number, copy, fate }) => (
        <li key={`${number} ${copy}`} title={fateWords[fate]}>
          <b className="numbers">{numberParts(number).part}</b> <Shape kind={fateShapes[fate]} />{' '}
          <span className="fate-word">{fate}</span>
        </li>
      ))}
    </ul>
  )
}

/** Kits that have numbers, and what became of each label. */
export function KitTable(props: {
  caption: string
  kits: readonly NumberedKit[]
  onOpen: (kit: NumberedKit) => void
}) {
  return (
    <Table
      caption={props.caption}
      columns={columns(props.onOpen)}
      rows={props.kits}
      rowKey={({ kit }) => kit}
    />
  )
}
