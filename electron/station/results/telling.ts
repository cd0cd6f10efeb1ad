/** Telling hunters, and following a detection up. */
import { draft, type EntryDraft } from '../../../shared-types/entry.ts'
import {
  type FollowUpStep,
  type HunterTold,
  resultWords,
  type ResultWord,
} from '../../../shared-types/laboratory-result.ts'
import type { LocalDate } from '../../../shared-types/local-date.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'
import { type AnimalNumber, grouped } from '../../../shared-types/sample-number.ts'
import { heldBack, isHeldBack } from './held-back.ts'

export interface ToTell {
  readonly animal: AnimalNumber
  /** The animal's result as it stands. */
  readonly word: ResultWord | null
  /** Open rows in doubt that name it. */
  readonly openRows: number
}

/**
 * Records that hunters were told. Refuses an animal without a result to tell or with one that is held
 * back, and a day to come.
 */
export function decideTold(
  animals: readonly ToTell[],
  { how, on, words }: Pick<HunterTold, 'how' | 'on' | 'words'>,
  today: LocalDate,
): Result<EntryDraft[]> {
  if (on > today)
    return refused('day-to-come', `${on} is still to come.`, 'Give the day they were told.', 'on')
  const drafts: EntryDraft[] = []
  for (const { animal, word, openRows } of animals) {
    if (isHeldBack(word, openRows)) return heldBack(animal)
    if (word === null || word === 'pending')
      return refused(
        'nothing-to-tell',
        `Animal ${grouped(animal)} has no result to tell yet.`,
        'Take it off the list, and tell its hunter when the result is in.',
        'animals',
      )
    if (word === 'detected' && how === 'look-up') return tellThem(animal)
    drafts.push(draft('hunter.told', { animal, word, how, on, words }))
  }
  return granted(drafts)
}

function tellThem(animal: AnimalNumber): Result<never> {
  return refused(
    'detected-is-told',
    `Animal ${grouped(animal)} is detected: a look-up alone does not tell its hunter what to do.`,
    'Reach the hunter in person, by phone, letter or e-mail, and record that.',
    'how',
  )
}

/** Records a step after a detection. Refuses it of an animal in which nothing was detected or presumed. */
export function decideFollowUp(
  { animal, word }: Omit<ToTell, 'openRows'>,
  step: FollowUpStep,
  words: string,
): Result<EntryDraft[]> {
  if (word === 'detected' || word === 'presumptive')
    return granted([draft('result.followed-up', { animal, step, words })])
  return refused(
    'nothing-to-follow-up',
    `Animal ${grouped(animal)} is ${word === null ? 'without a result' : resultWords[word]}: there is nothing to follow up.`,
    'Choose an animal of the follow-up list.',
    'animal',
  )
}
