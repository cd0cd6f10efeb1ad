import type { CallOutput } from '../../shared-types/desk-api.ts'
import {
  PersonId,
  type SampleNumber,
  kitOf,
  numberParts,
  readSampleNumber,
} from '../../shared-types/sample-number.ts'
import { useTell } from '../desk/use-desk.ts'
import { useScan } from '../scanner/scans.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { memberOf } from './assign-dialog.tsx'
import type { Roving } from '../parts/use-roving.ts'
import { calledNumber } from './words.ts'

type Line = CallOutput<'line'>
type LineAnimal = Line['waiting'][number]

/** The animal in the line that a label belongs to: its own number, or that of the kit printed for it. */
function animalOf(line: Line, number: SampleNumber): LineAnimal | undefined {
  const kit = kitOf(number)
  const isPart = 'LRXKH'.includes(numberParts(number).part)
  return [...line.waiting, ...line.working].find(
    (each) => each.animal === number || (isPart && each.kit === kit),
  )
}

/** On the line a label chooses its animal, and a badge then gives the chosen animal to its bearer. */
export function useLineScan(props: { line: Line; waiting: Roving; crew: Roving }): void {
  const { line, waiting, crew } = props
  const assign = useTell('animal.assign')

  async function give(badge: PersonId): Promise<void> {
    const animal = line.waiting.find((each) => each.animal === waiting.chosen)
    if (animal === undefined)
      return sayRefused({ say: 'Nobody is waiting.', next: 'Check an animal in first.' })
    const answer = await assign.tell({ animal: animal.animal, sampler: badge })
    if (!answer.ok) return sayRefused(answer.refusal)
    const name = memberOf(line, badge)?.name ?? 'that person'
    sayDone(`${calledNumber(animal.animal)} is with ${name}.`)
  }

  useScan((text) => {
    const read = readSampleNumber(text)
    if (!read.ok) return 'not-mine'
    const badge = PersonId.safeParse(read.value)
    if (badge.success) return void give(badge.data)
    const animal = animalOf(line, read.value)
    if (animal === undefined) return 'not-mine'
    if (animal.state === 'waiting') waiting.focus(animal.animal)
    else crew.focus(animal.sampler ?? undefined)
    sayDone(`${calledNumber(animal.animal)} is chosen.`)
  })
}
