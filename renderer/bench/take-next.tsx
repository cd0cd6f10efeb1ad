import { ageWords, headFaultWords, speciesWords } from '../../shared-types/animal.ts'
import { type AnimalNumber, grouped } from '../../shared-types/sample-number.ts'
import type { BenchView } from '../../shared-types/views/animal.ts'
import { nothing, useAsk, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Empty } from '../parts/empty.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { Ago } from '../parts/time.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { BenchStep } from './bench-step.tsx'
import { BladeCaution } from './cautions.tsx'

/** An empty bench: the next animal that this sampler can work. */
export function TakeNext({ bench }: { readonly bench: BenchView }) {
  const { tell, busy, refusal } = useTell('animal.assign')
  const [next, ...later] = bench.nextInLine
  async function take(animal: AnimalNumber) {
    const answer = await tell({ animal, sampler: bench.sampler })
    if (answer.ok) sayDone(`${grouped(animal)} is on the bench.`)
    else sayRefused(answer.refusal)
  }
  if (next === undefined)
    return (
      <BenchStep title="The bench is empty">
        <Empty
          say="No animal in the line that you can work."
          next="New ones appear here by themselves. F2 shows the whole line."
        />
      </BenchStep>
    )
  return (
    <BenchStep title="Next in line" refusal={refusal} focused>
      <p className="bench-number">
        <NumberText number={next} />
      </p>
      <NextFacts animal={next} />
      <div className="row">
        <Button
          kind="main"
          keyHint="Enter"
          autoFocus
          isDisabled={busy}
          why="asking the desk"
          onPress={() => void take(next)}
        >
          Take it to the bench
        </Button>
      </div>
      {later.length > 0 && (
        <p className="bench-later">
          After it:{' '}
          {later.map((animal) => (
            <NumberText key={animal} number={animal} />
          ))}
        </p>
      )}
      <BladeCaution />
    </BenchStep>
  )
}

function NextFacts({ animal }: { readonly animal: AnimalNumber }) {
  const line = useAsk('line', nothing).data
  const facts = line?.waiting.find((each) => each.animal === animal)
  if (!facts) return null
  const faults = facts.head.faults.map((fault) => headFaultWords[fault])
  return (
    <p className="bench-say">
      {speciesWords[facts.species]}, {ageWords[facts.age]}, tag{' '}
      <span className="numbers">{facts.tag}</span>, {faults.join(', ') || 'head whole'}, waiting{' '}
      <Ago ms={facts.arrivedMs} />
    </p>
  )
}
