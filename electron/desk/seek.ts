/** Find anything: hits while letters are typed, and the story of whatever was found. */
import type { ReadableLog } from '../../db/connection.ts'
import { understood } from '../../db/fold/fold.ts'
import { animalsOfTag } from '../../db/read/animals.ts'
import { tissuesOf } from '../../db/read/bags.ts'
import { coolers } from '../../db/read/coolers.ts'
import { people } from '../../db/read/people.ts'
import {
  animalsOfHunter,
  entriesNaming,
  huntersBeginning,
  numbersBeginning,
  tagsBeginning,
} from '../../db/read/seek.ts'
import { entriesAbout } from '../../db/read/story.ts'
import type { Entry } from '../../shared-types/entry.ts'
import { fill } from '../../shared-types/fill.ts'
import { granted } from '../../shared-types/result.ts'
import {
  AnimalNumber,
  numberParts,
  type Part,
  type SampleNumber,
} from '../../shared-types/sample-number.ts'
import { orderStamp } from '../../shared-types/stamp.ts'
import type { SeekHit, StoryOf, StoryView } from '../../shared-types/views/find.ts'
import { partOf } from '../station/scan.ts'
import type { QueryHandlers } from './call.ts'
import { namesOf } from './names.ts'
import { tellNumber } from './number.ts'
import { seekWords as words } from './seek-words.ts'
import { tellEntries } from './story.ts'

/** As many hits as are shown. */
const most = 12

/** `A0042`: the part of a number that people call out. */
function called(number: SampleNumber): string {
  const { desk, serial } = numberParts(number)
  return `${desk.slice(-1)}${String(serial).padStart(4, '0')}`
}

/** What a crew calls `A12` is the number of this station, desk A, serial 12. */
function asCalled(log: ReadableLog, text: string): string[] {
  const [, letter, serial] = /^([A-Z])(\d{1,4})$/.exec(text) ?? []
  return letter && serial ? [`${log.desk.slice(0, 5)}${letter}${serial.padStart(4, '0')}`] : []
}

const titles: Partial<Record<Part, string>> = {
  A: words.animal,
  K: words.kit,
  M: words.handoff,
  C: words.cooler,
  P: words.person,
}

function titleOf(log: ReadableLog, number: SampleNumber): string {
  const title = titles[partOf(number)] ?? words.bag
  return fill(title, { called: called(number), name: namesOf(log)(number) })
}

function hitOf(log: ReadableLog, number: SampleNumber): SeekHit {
  return {
    of: { is: 'number', number },
    title: titleOf(log, number),
    say: tellNumber(log, number).say,
  }
}

function animalsIn(log: ReadableLog, of: StoryOf): AnimalNumber[] {
  switch (of.is) {
    case 'number':
      return partOf(of.number) === 'A' ? [AnimalNumber.parse(of.number)] : []
    case 'hunter':
      return animalsOfHunter(log, of.hunter)
    case 'tag':
      return animalsOfTag(log, of.tag).map(({ animal }) => animal)
  }
}

function several(animals: readonly AnimalNumber[]): string {
  const count = animals.length
  const said = { count, animals: animals.map(called).join(', ') }
  return fill(count === 0 ? words.none : count === 1 ? words.one : words.several, said)
}

function nameHit(log: ReadableLog, of: Exclude<StoryOf, { is: 'number' }>): SeekHit {
  return { of, title: fill(words[of.is], { ...of }), say: several(animalsIn(log, of)) }
}

function hits(log: ReadableLog, typed: string): SeekHit[] {
  const text = typed.trim().toUpperCase()
  if (text.length < 2) return []
  const asTyped = [...new Set([text, typed.trim()])]
  const hunters = asTyped.flatMap((beginning) => huntersBeginning(log, beginning))
  const isNamed = ({ name }: { name: string }) => name.toUpperCase().includes(text)
  const numbers = [text.replaceAll('-', ''), ...asCalled(log, text)].flatMap((beginning) => {
    const { animals, kits, bags } = numbersBeginning(log, beginning)
    return [...animals, ...kits, ...bags]
  })
  return [
    ...tagsBeginning(log, text).map((tag) => nameHit(log, { is: 'tag', tag })),
    ...hunters.map((hunter) => nameHit(log, { is: 'hunter', hunter })),
    ...coolers(log)
      .filter(isNamed)
      .map(({ cooler }) => hitOf(log, cooler)),
    ...people(log)
      .filter(isNamed)
      .map(({ person }) => hitOf(log, person)),
    ...[...new Set(numbers)].map((number) => hitOf(log, number)),
  ].slice(0, most)
}

/** The entries about an animal and its bags, or those that name any other number. */
function entriesOf(log: ReadableLog, of: StoryOf): Entry[] {
  const animals = animalsIn(log, of)
  if (animals.length === 0) return of.is === 'number' ? entriesNaming(log, of.number) : []
  const bags = animals.flatMap((animal) =>
    tissuesOf(log, animal).flatMap(({ bag }): SampleNumber[] => (bag ? [bag] : [])),
  )
  return entriesAbout(log, [...animals, ...bags]).toSorted(
    (a, b) => orderStamp(a.at, b.at) || a.seq - b.seq,
  )
}

/** Lines name the animal where there are several, or where the story is of something else. */
function linesOf(log: ReadableLog, of: StoryOf, entries: readonly Entry[]): StoryView['lines'] {
  const isOfOne = of.is === 'number' && partOf(of.number) === 'A'
  const lines = tellEntries(log, entries)
  if (isOfOne) return lines
  return lines.map((line, place) => {
    const entry = entries[place]
    const body = entry && understood(entry)?.body
    const animal = body && 'animal' in body ? body.animal : null
    return animal
      ? { ...line, say: fill(words.of, { animal: called(animal), say: line.say }) }
      : line
  })
}

function storyView(log: ReadableLog, of: StoryOf): StoryView {
  const entries = entriesOf(log, of)
  const { title, say } = of.is === 'number' ? hitOf(log, of.number) : nameHit(log, of)
  return { title, say, animals: animalsIn(log, of), lines: linesOf(log, of, entries) }
}

export const seekQueries = {
  seek: ({ log }, { text }) => granted({ hits: hits(log, text) }),
  story: ({ log }, { of }) => granted(storyView(log, of)),
} satisfies Partial<QueryHandlers>
