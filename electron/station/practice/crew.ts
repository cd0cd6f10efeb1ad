/** The crew of a practice day: a lead, samplers with different training, volunteers, an office. */
import type { Role, Training } from '../../../shared-types/person.ts'
import { type DeskId, type PersonId, personId } from '../../../shared-types/sample-number.ts'

/** Minutes are counted from the beginning of the day. */
export interface CrewPlan {
  readonly person: PersonId
  readonly name: string
  readonly role: Role
  readonly training: readonly Training[]
  /** Null for people of the office, who are not at the station. */
  readonly shift: {
    readonly from: number
    readonly to: number
    readonly break: number | null
  } | null
}

type Post = Pick<CrewPlan, 'role' | 'training' | 'shift'>

const everything: readonly Training[] = ['deer', 'elk-and-moose', 'skinned-heads']

/** The first of a shift works every head, so no animal waits for training that nobody has. */
function trainingOf(place: number): readonly Training[] {
  if (place === 0) return everything
  return place % 2 === 1 ? ['deer', 'elk-and-moose'] : ['deer']
}

const breakLength = 30

function shiftOf(role: Role, count: number, from: number, to: number, firstBreak: number | null) {
  return Array.from({ length: count }, (_, place): Post => {
    const pause = firstBreak === null ? null : firstBreak + place * (breakLength + 5)
    const training = role === 'sampler' ? trainingOf(place) : []
    // In a large crew some breaks would come after the shift; those people go without.
    return {
      role,
      training,
      shift: { from, to, break: pause !== null && pause < to - 60 ? pause : null },
    }
  })
}

/** Samplers that a rush keeps busy at eight minutes an animal, and one in ten to spare; at least two. */
function samplersFor(animalsAnHour: number): number {
  return Math.max(2, Math.ceil((animalsAnHour * 8 * 1.1) / 60))
}

/** A full day from six in the morning: an early and a late shift that overlap at noon. */
export function dayPosts(animals: number): Post[] {
  const helpers = 1 + Math.floor(animals / 150)
  return [
    { role: 'lead', training: everything, shift: { from: 0, to: 900, break: null } },
    ...shiftOf('sampler', samplersFor(animals * 0.1), 30, 540, 255),
    ...shiftOf('volunteer', helpers, 30, 540, 300),
    ...shiftOf('sampler', samplersFor(animals * 0.23), 345, 840, 540),
    ...shiftOf('volunteer', helpers, 345, 840, 500),
    { role: 'office', training: [], shift: null },
  ]
}

/** A morning with too few samplers for its rush, so that a line builds up. */
export function morningPosts(animals: number): Post[] {
  const samplers = Math.max(2, Math.round((animals * 4) / 40))
  return [
    { role: 'lead', training: everything, shift: { from: 0, to: 600, break: null } },
    ...shiftOf('sampler', samplers - 1, 15, 480, null),
    ...shiftOf('sampler', 1, 15, 480, 165),
    ...shiftOf('volunteer', 2, 15, 480, null),
    { role: 'office', training: [], shift: null },
  ]
}

/** Numbers and names for the posts, in the order in which they are added to the log. */
export function crewOf(desk: DeskId, posts: readonly Post[], cast: readonly string[]): CrewPlan[] {
  return posts.map((post, place) => ({
    ...post,
    person: personId(desk, place + 1),
    name: cast[place] ?? `Helper ${place + 1}`,
  }))
}
