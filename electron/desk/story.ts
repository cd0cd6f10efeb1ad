/** The story of an animal: its entries in plain words, oldest first. */
import type { ReadableLog } from '../../db/connection.ts'
import { understood } from '../../db/fold/fold.ts'
import { tissuesOf } from '../../db/read/bags.ts'
import { entriesAbout } from '../../db/read/story.ts'
import type { Entry } from '../../shared-types/entry.ts'
import type { AnimalNumber, SampleNumber } from '../../shared-types/sample-number.ts'
import type { StoryLine } from '../../shared-types/views/animal.ts'
import { sayEntry } from '../station/story.ts'
import { namesOf } from './names.ts'

export function storyOf(log: ReadableLog, animal: AnimalNumber): StoryLine[] {
  const bags = tissuesOf(log, animal).flatMap(({ bag }): SampleNumber[] => (bag ? [bag] : []))
  return tellEntries(log, entriesAbout(log, [animal, ...bags]))
}

/** Entries in plain words, in the order given. */
export function tellEntries(log: ReadableLog, entries: readonly Entry[]): StoryLine[] {
  const nameOf = namesOf(log)
  return entries.map((entry) => {
    const known = understood(entry)
    return {
      ms: entry.at.wall,
      by: entry.by ? nameOf(entry.by) : '',
      kind: entry.kind,
      say: known
        ? sayEntry(known, nameOf)
        : `A later version of the desk recorded something here (${entry.kind}).`,
    }
  })
}
