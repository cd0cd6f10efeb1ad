import type { Outcome } from '../../shared-types/animal.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import { missedWords, siteWords } from '../../shared-types/tissue.ts'
import type { AnimalView, SiteView } from '../../shared-types/views/animal.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Badge } from '../parts/badge.tsx'
import { Notice } from '../parts/notice.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { BenchStep } from './bench-step.tsx'
import { BleachCaution } from './cautions.tsx'
import { outcomeSentence } from './outcome.ts'

/** Each site is settled: what was taken, once more, and the animal is done. */
export function Finish(props: { animal: AnimalView; onFinished: (outcome: Outcome) => void }) {
  const { animal } = props
  const { tell, busy, refusal } = useTell('animal.finish')
  async function finish() {
    const answer = await tell({ animal: animal.animal })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`${grouped(animal.animal)} is finished: ${outcomeSentence(answer.value.outcome)}.`)
    props.onFinished(answer.value.outcome)
  }
  return (
    <BenchStep title="Finish the animal" refusal={refusal} focused>
      <ul className="finish-sites">
        {animal.sites.map((site) => (
          <li key={site.site}>
            <strong>{siteWords[site.site]}</strong> <Taken site={site} />
          </li>
        ))}
      </ul>
      {animal.placeUsable || (
        <Notice kind="warn">
          The place of harvest is missing or not precise enough: the laboratory commonly does not
          test such a sample. Ask the hunter before they leave.
        </Notice>
      )}
      <div className="row">
        <Button
          kind="main"
          keyHint="Enter"
          autoFocus
          isDisabled={busy}
          why="being written"
          onPress={() => void finish()}
        >
          Finish
        </Button>
      </div>
      <BleachCaution />
    </BenchStep>
  )
}

function Taken({ site }: { readonly site: SiteView }) {
  if (site.bag)
    return (
      <Badge shape="fine">
        in bag <NumberText number={site.bag} />
      </Badge>
    )
  return (
    <Badge shape="idle">not taken{site.missed && `: ${missedWords[site.missed.reason]}`}</Badge>
  )
}
