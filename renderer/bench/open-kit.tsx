import { grouped } from '../../shared-types/sample-number.ts'
import type { AnimalView } from '../../shared-types/views/animal.ts'
import { useTell } from '../desk/use-desk.ts'
import { NumberEntry } from '../parts/number-entry.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { useScan } from '../scanner/scans.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { BenchStep } from './bench-step.tsx'
import { BladeCaution } from './cautions.tsx'
import { isElsewhere } from './elsewhere.ts'

/** Step one: a kit is opened on the animal by scanning any of its labels. */
export function OpenKit({ animal }: { readonly animal: AnimalView }) {
  const { tell, refusal } = useTell('kit.open')
  async function open(text: string) {
    const answer = await tell({ animal: animal.animal, kit: text })
    if (answer.ok) sayDone(`Kit ${grouped(answer.value.kit)} is open on this animal.`)
    else sayRefused(answer.refusal)
  }
  useScan((text) => {
    if (isElsewhere(text)) return 'not-mine'
    void open(text)
  })
  return (
    <BenchStep title="Scan the kit" refusal={refusal} focused>
      <p className="bench-say">Any label of the kit will do: a bag, the data card or the stub.</p>
      {animal.kit && (
        <p>
          Labels were printed for this animal: kit <NumberText number={animal.kit} />.
        </p>
      )}
      <div className="bench-typed">
        <NumberEntry label="Or type its number" hint="twelve characters, then Enter" autoFocus />
      </div>
      <BladeCaution />
    </BenchStep>
  )
}
