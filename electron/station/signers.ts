/** Who signs a close: four eyes, unless the station has settled otherwise or the lead says why. */
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { PersonId } from '../../shared-types/sample-number.ts'

/** The two who sign, or why the lead signs alone. */
export interface Signers {
  readonly lead: PersonId
  readonly second: PersonId | null
  readonly aloneBecause: string
}

/** Refuses `second-is-the-lead`, and `second-wanted` where nobody signs beside the lead for no reason. */
export function checkSigners(signers: Signers, secondWanted: boolean): Result<Signers> {
  const { lead, second, aloneBecause } = signers
  if (second === lead)
    return refused(
      'second-is-the-lead',
      'The second person is somebody else than the lead.',
      'Ask another of the crew to look the counts over and sign.',
      'second',
    )
  if (second === null && secondWanted && aloneBecause.length < 3)
    return refused(
      'second-wanted',
      'A second person signs the close beside the lead.',
      'Let one of the crew sign with their own PIN, or say why nobody can.',
      'second',
    )
  return granted(second === null ? signers : { ...signers, aloneBecause: '' })
}
