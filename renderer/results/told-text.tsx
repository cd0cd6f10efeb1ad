import { resultWords, toldByWords } from '../../shared-types/laboratory-result.ts'
import type { ResultAnimalView } from '../../shared-types/views/results.ts'

/** Whether, how and by whom the hunter was told; and if that was another result. */
export function ToldText({ animal }: { animal: ResultAnimalView }) {
  const { told, changedSinceTold } = animal
  if (told === null) return <span>not yet</span>
  return (
    <span>
      {changedSinceTold && <strong>Told “{resultWords[told.word]}” before. </strong>}
      {toldByWords[told.how]}, {told.on}, by {told.by}
    </span>
  )
}
