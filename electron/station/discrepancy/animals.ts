/** Discrepancies about animals and what was recorded of them. */
import {
  ageWords,
  type AnimalFacts,
  outcomeWords,
  type Species,
  speciesWords,
} from '../../../shared-types/animal.ts'
import type { KnownEntry } from '../../../shared-types/entry.ts'
import type { LocalDate } from '../../../shared-types/local-date.ts'
import { type AnimalNumber, type DeskId, grouped } from '../../../shared-types/sample-number.ts'
import type { Discrepancy, Side } from './discrepancy.ts'
import { groupsOf } from './groups.ts'

type Of<K extends KnownEntry['kind']> = Extract<KnownEntry, { kind: K }>

/** An animal that shares its tag with another. */
export interface TaggedAnimal {
  readonly animal: AnimalNumber
  readonly desk: DeskId
  readonly hunter: string
  readonly tag: string
  readonly species: Species
  readonly sex: string
  readonly arrivedMs: number
}

/**
 * Within how many hours one hunter's animal at two stations is most likely one animal, stopped with
 * twice on the way home. Our own choice: a hunting day with its drive.
 */
export const sameAnimalHours = 12

/** One tag on several animals: one animal that was checked in twice, or a tag in dispute. */
export function sharedTags(animals: readonly TaggedAnimal[]): Discrepancy[] {
  return [...groupsOf(animals, ({ tag }) => tag)].map(([tag, sharing]) => {
    const evidence = sharing.map(({ animal }) => animal).toSorted()
    const sides = sharing.map((one) => tagSide(one, sharing))
    return isLikelyOneAnimal(sharing)
      ? {
          kind: 'checked-in-twice',
          evidence,
          say: `Tag ${tag} of hunter ${sharing[0]?.hunter ?? ''} was checked in at ${sharing.length} desks within ${sameAnimalHours} hours: likely one animal.`,
          next: 'Compare the two records; if one animal was sampled twice, tell the laboratory.',
          sides,
        }
      : {
          kind: 'tag-twice',
          evidence,
          say: `Tag ${tag} is on ${sharing.length} animals.`,
          next: 'Look up in the licence records whose tag it is, and ask the stations.',
          sides,
        }
  })
}

function isLikelyOneAnimal(sharing: readonly TaggedAnimal[]): boolean {
  const [first] = sharing
  if (!first) return false
  const times = sharing.map(({ arrivedMs }) => arrivedMs)
  return (
    sharing.every(({ hunter, species }) => hunter === first.hunter && species === first.species) &&
    new Set(sharing.map(({ desk }) => desk)).size === sharing.length &&
    Math.max(...times) - Math.min(...times) <= sameAnimalHours * 3_600_000
  )
}

function tagSide(
  { animal, desk, hunter, species, sex, arrivedMs }: TaggedAnimal,
  sharing: readonly TaggedAnimal[],
): Side {
  const same = sharing.map((each) => each.animal).filter((each) => each !== animal)
  return {
    key: animal,
    title: `Animal ${grouped(animal)}`,
    lines: [`${speciesWords[species]}, ${sex}`, `hunter ${hunter}`],
    desk,
    ms: arrivedMs,
    holds: { is: 'one-animal', kept: animal, same },
  }
}

/** One animal number given to two animals, as happens when a copied log is worked in as well. */
export function numbersGivenTwice(checkIns: readonly Of<'animal.checked-in'>[]): Discrepancy[] {
  return [...groupsOf(checkIns, ({ body }) => body.animal)].map(([animal, entries]) => ({
    kind: 'facts-contradict',
    evidence: entries.map(({ hash }) => hash).toSorted(),
    say: `Animal number ${grouped(animal)} was given to ${entries.length} animals.`,
    next: 'Find each of them by its tag; the tissue under this number may be of either.',
    sides: entries.map((entry) => factsSide(entry, 'Checked in as')),
  }))
}

function factsSide(
  { hash, desk, at, body }: Of<'animal.checked-in' | 'animal.amended'>,
  title: string,
): Side {
  const { animal, facts, noSample } = body
  return {
    key: hash,
    title,
    lines: factLines(facts),
    desk,
    ms: at.wall,
    holds: { is: 'facts', animal, facts, noSample },
  }
}

function factLines(facts: AnimalFacts): string[] {
  const { place } = facts
  const where =
    place.by === 'unit'
      ? `unit ${place.unit} ${place.place}`.trim()
      : place.by === 'coordinates'
        ? `${place.latitude}, ${place.longitude}`
        : 'place not known'
  return [
    `${speciesWords[facts.species]}, ${facts.sex}, ${ageWords[facts.age]}`,
    `tag ${facts.tag}, hunter ${facts.hunter}`,
    `taken ${facts.harvested}, ${where}`,
  ]
}

/** Which line of work an entry belongs to: its desk, and in a forked log the side it is on. */
export type LineOfWork = (entry: { readonly desk: DeskId; readonly hash: string }) => string

/**
 * Corrections of one animal made on lines of work that did not know of each other and end in
 * different facts. A later correction on the same line takes the place of an earlier one.
 */
export function amendedApart(
  amendments: readonly Of<'animal.amended'>[],
  lineOf: LineOfWork,
): Discrepancy[] {
  return [...groupsOf(amendments, ({ body }) => body.animal)].flatMap(([animal, entries]) => {
    const last = lastOfEachLine(entries, lineOf)
    if (new Set(last.map(({ body }) => JSON.stringify(body.facts))).size < 2) return []
    return [
      {
        kind: 'facts-contradict' as const,
        evidence: last.map(({ hash }) => hash).toSorted(),
        say: `Animal ${grouped(animal)} was corrected at ${last.length} places, each not knowing of the other.`,
        next: 'Ask both who corrected it; correct the animal once more if neither is right.',
        sides: last.map((entry) => factsSide(entry, `Corrected: ${entry.body.reason}`)),
      },
    ]
  })
}

function lastOfEachLine<E extends { readonly desk: DeskId; readonly hash: string }>(
  entries: readonly E[],
  lineOf: LineOfWork,
): E[] {
  const last = new Map(entries.map((entry) => [lineOf(entry), entry]))
  // What was done before a log was copied is known on both sides of the fork.
  const isForked = (desk: DeskId) =>
    entries.some((each) => each.desk === desk && lineOf(each) !== desk)
  return [...last].flatMap(([line, entry]) =>
    line === entry.desk && isForked(entry.desk) ? [] : [entry],
  )
}

/** One animal finished with different outcomes. */
export function outcomesApart(finishes: readonly Of<'animal.finished'>[]): Discrepancy[] {
  return [...groupsOf(finishes, ({ body }) => body.animal)].flatMap(([animal, entries]) => {
    if (new Set(entries.map(({ body }) => body.outcome)).size < 2) return []
    return [
      {
        kind: 'facts-contradict' as const,
        evidence: entries.map(({ hash }) => hash).toSorted(),
        say: `Animal ${grouped(animal)} was finished with different outcomes.`,
        next: 'Count its bags: they say which sides were taken.',
        sides: entries.map(({ hash, desk, at, body }) => ({
          key: hash,
          title: `Sampled: ${outcomeWords[body.outcome]}`,
          lines: [],
          desk,
          ms: at.wall,
          holds: { is: 'outcome', animal, outcome: body.outcome },
        })),
      },
    ]
  })
}

/** A correction of an animal whose day is closed, made after the last close. */
export interface LateAmendment {
  readonly animal: AnimalNumber
  readonly desk: DeskId
  readonly date: LocalDate
  readonly hash: string
  readonly wall: number
  readonly byDesk: DeskId
  readonly reason: string
}

/** The close that a late correction comes after. */
export interface LastClose {
  readonly desk: DeskId
  readonly date: LocalDate
  readonly hash: string
  readonly wall: number
}

/** Closed days whose animals were corrected afterwards: the signed sheet may no longer be right. */
export function lateAmendments(
  closes: readonly LastClose[],
  late: readonly LateAmendment[],
): Discrepancy[] {
  return closes.flatMap((close) => {
    const after = late.filter(({ desk, date }) => desk === close.desk && date === close.date)
    return after.length === 0 ? [] : [lateDay(close, after)]
  })
}

function lateDay(close: LastClose, after: readonly LateAmendment[]): Discrepancy {
  return {
    kind: 'amended-after-close',
    evidence: [close.hash, ...after.map(({ hash }) => hash)].toSorted(),
    say: `${after.length === 1 ? 'An animal' : `${after.length} animals`} of the day ${close.date} at desk ${close.desk} ${after.length === 1 ? 'was' : 'were'} corrected after the day was closed.`,
    next: 'Look whether the signed close sheet still holds; print it again if it does not.',
    sides: [
      {
        key: close.hash,
        title: `Day ${close.date} closed`,
        lines: [],
        desk: close.desk,
        ms: close.wall,
      },
      ...after.map(({ hash, animal, reason, byDesk, wall }) => ({
        key: hash,
        title: `Animal ${grouped(animal)} corrected`,
        lines: [reason],
        desk: byDesk,
        ms: wall,
      })),
    ],
  }
}
