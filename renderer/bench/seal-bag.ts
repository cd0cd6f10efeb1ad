import type { AnimalView, SiteView } from '../../shared-types/views/animal.ts'
import { siteWords } from '../../shared-types/tissue.ts'
import { useTell } from '../desk/use-desk.ts'
import { useScan } from '../scanner/scans.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { isElsewhere } from './elsewhere.ts'

/** Takes each scanned bag label as sealing the bag of this site; a wrong one gets the desk's sentence. */
export function useSealByScan(animal: AnimalView, { site }: SiteView, onSealed: () => void) {
  const { tell, refusal } = useTell('bag.seal')
  async function seal(bag: string) {
    const answer = await tell({ animal: animal.animal, site, bag })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`The ${siteWords[site]} is sealed in its bag.`)
    onSealed()
  }
  useScan((text) => {
    if (isElsewhere(text)) return 'not-mine'
    void seal(text)
  })
  return refusal
}
