import { useState } from 'react'
import { speciesWords } from '../../shared-types/animal.ts'
import { keptWords, siteWords } from '../../shared-types/tissue.ts'
import type { BagView } from '../../shared-types/views/coolers.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { Panel } from '../parts/panel.tsx'
import { HoldUntil } from './hold-until.tsx'
import { oldestFirst } from './oldest-first.ts'

/** What a bag holds, in words. Fresh is the rule; what is kept otherwise says so. */
export function tissueOf({ species, site, kept }: BagView): string {
  const tissue = `${speciesWords[species]}, ${siteWords[site]}`
  return kept === 'fresh' ? tissue : `${tissue}, ${keptWords[kept]}`
}

/** Sealed bags that are in no cooler yet, the oldest first: the order to scan them in. */
export function BenchBags(props: { bags: readonly BagView[] }) {
  const [isAllShown, setAllShown] = useState(false)
  const { shown, more } = oldestFirst(props.bags, isAllShown)
  return (
    <Panel title={`Still on the bench: ${props.bags.length}`}>
      {shown.length === 0 && <Badge shape="fine">every sealed bag is in a cooler</Badge>}
      <ul className="coolers-bench">
        {shown.map((bag) => (
          <li key={bag.bag}>
            <b>
              <NumberText number={bag.bag} />
            </b>
            <span>{tissueOf(bag)}</span>
            <HoldUntil ms={bag.holdUntilMs} />
          </li>
        ))}
      </ul>
      {more > 0 && <Button onPress={() => setAllShown(true)}>Show {more} more</Button>}
    </Panel>
  )
}
