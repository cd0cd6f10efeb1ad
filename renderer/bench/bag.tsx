import { checkWords, keptWords, sitePart, siteWords } from '../../shared-types/tissue.ts'
import type { AnimalView, SiteView } from '../../shared-types/views/animal.ts'
import { Button } from '../parts/button.tsx'
import { NumberEntry } from '../parts/number-entry.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { BenchStep } from './bench-step.tsx'
import { CutFace } from './cut-face.tsx'
import { useSealByScan } from './seal-bag.ts'
import { sentence } from './sentence.ts'

/**
 * The tissue goes into its bag, and the bag's own label is scanned back onto it. The focus is in the
 * field, and no deed has a bare key: a number typed by hand must press nothing.
 */
export function Bag(props: {
  animal: AnimalView
  site: SiteView
  onSealed: () => void
  onLookAgain: () => void
  onMiss: () => void
}) {
  const { animal, site } = props
  const refusal = useSealByScan(animal, site, props.onSealed)
  return (
    <BenchStep
      title={`${sentence(siteWords[site.site])}: bag it and scan the bag`}
      refusal={refusal}
      focused
    >
      <div className="bench-bag">
        <p className="side-letter" aria-hidden="true">
          {sitePart[site.site]}
        </p>
        <div className="stack">
          <p className="bench-say">
            Into the {site.site} bag, {keptWords[site.kept]}. Close it, then scan its label.
          </p>
          {site.expectedBag && (
            <p className="bench-number">
              <NumberText number={site.expectedBag} />
            </p>
          )}
        </div>
      </div>
      <div className="bench-typed">
        <NumberEntry
          label="Or type the bag's number"
          hint="twelve characters, then Enter"
          autoFocus
        />
      </div>
      <div className="row">
        <Button keyHint="Alt+C" onPress={props.onLookAgain}>
          Look again
        </Button>
        <Button keyHint="Alt+M" onPress={props.onMiss}>
          Not taken
        </Button>
        {site.check && (
          <p className="last-look">
            <CutFace check={site.check} /> Last look: {checkWords[site.check]}
            {site.sizeMm !== null && `, ${site.sizeMm} mm`}
          </p>
        )}
      </div>
    </BenchStep>
  )
}
