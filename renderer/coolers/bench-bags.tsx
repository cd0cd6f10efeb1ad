import { speciesWords } from '../../shared-types/animal.ts'
import { keptWords, siteWords } from '../../shared-types/tissue.ts'
import type { BagView } from '../../shared-types/views/coolers.ts'
import { Badge } from '../parts/badge.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { Panel } from '../parts/panel.tsx'
import { HoldUntil } from './hold-until.tsx'

/** What a bag holds, in words. */
export function tissueOf(bag: BagView): string {
  return `${speciesWords[bag.species]}, ${siteWords[bag.site]}, ${keptWords[bag.kept]}`
}

/** Sealed bags that are in no cooler yet, the oldest first: the order to scan them in. */
export function BenchBags(props: { bags: readonly BagView[] }) {
  const oldestFirst = props.bags.toSorted((a, b) => a.sealedMs - b.sealedMs)
  return (
    <Panel title={`Still on the bench: ${props.bags.length}`}>
      {oldestFirst.length === 0 && <Badge shape="fine">every sealed bag is in a cooler</Badge>}
      <ul className="coolers-bench">
        {oldestFirst.map((bag) => (
          <li key={bag.bag}>
            <b>
              <NumberText number={bag.bag} />
            </b>
            <span>{tissueOf(bag)}</span>
            <HoldUntil ms={bag.holdUntilMs} />
          </li>
        ))}
      </ul>
    </Panel>
  )
}
