import { useState } from 'react'
import type { BagView } from '../../shared-types/views/coolers.ts'
import { useMay } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { Panel } from '../parts/panel.tsx'
import { type Column, Table } from '../parts/table.tsx'
import { tissueOf } from './bench-bags.tsx'
import { HoldUntil } from './hold-until.tsx'
import { oldestFirst } from './oldest-first.ts'

/** What is inside the cooler by the log, and the way to take a bag out of an open one. */
export function BagsInside(props: {
  bags: readonly BagView[]
  isOpen: boolean
  onTakeOut: (bag: BagView) => void
}) {
  const { bags, isOpen, onTakeOut } = props
  const [isAllShown, setAllShown] = useState(false)
  const { shown, more } = oldestFirst(bags, isAllShown)
  const mayTakeOut = useMay('bag.takeOut')
  const columns: Column<BagView>[] = [
    {
      head: 'Bag',
      cell: (bag) => (
        <>
          <NumberText number={bag.bag} />
          {bag.excursion && <Badge shape="soon">lay out of limits</Badge>}
        </>
      ),
    },
    { head: 'Tissue', cell: tissueOf },
    {
      head: 'Freeze or deliver by',
      cell: (bag) => <HoldUntil ms={bag.holdUntilMs} isUnderHead />,
    },
  ]
  if (isOpen && mayTakeOut)
    columns.push({
      head: 'Put right',
      cell: (bag) => (
        <Button label={`Take out ${bag.bag}`} onPress={() => onTakeOut(bag)}>
          Take out
        </Button>
      ),
    })
  return (
    <Panel title="Inside">
      {bags.length === 0 ? (
        <p>Empty.</p>
      ) : (
        <Table
          caption="Bags inside this cooler"
          columns={columns}
          rows={shown}
          rowKey={(bag) => bag.bag}
        />
      )}
      {more > 0 && <Button onPress={() => setAllShown(true)}>Show {more} more</Button>}
    </Panel>
  )
}
