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

interface Shift {
  readonly from: number
  readonly to: number
  /** When the first of them takes a break; the others follow one after another. Null for no breaks. */
  readonly firstBreak: number | null
}

/** So many people of one role on one shift. In a large crew the last breaks would come too late: none. */
function shiftOf(role: Role, count: number, { from, to, firstBreak }: Shift): Post[] {
  return Array.from({ length: count }, (_, place) => {
    const pause = firstBreak === null ? to : firstBreak + place * (breakLength + 5)
    const training = role === 'sampler' ? trainingOf(place) : []
    return { role, training, shift: { from, to, break: pause < to - 60 ? pause : null } }
  })
}

/** Samplers whom so many animals an hour keep busy at seven minutes each, none to spare; at least two. */
function samplersFor(animalsAnHour: number): number {
  return Math.max(2, Math.round((animalsAnHour * 7) / 60))
}

/** A full day from six in the morning: an early and a late shift that overlap at noon. */
export function dayPosts(animals: number): Post[] {
  const helpers = 1 + Math.floor(animals / 150)
  const [early, late] = [
    { from: 30, to: 540 },
    { from: 345, to: 840 },
  ]
  return [
    { role: 'lead', training: everything, shift: { from: 0, to: 900, break: null } },
    ...shiftOf('sampler', samplersFor(animals * 0.1), { ...early, firstBreak: 255 }),
    ...shiftOf('volunteer', helpers, { ...early, firstBreak: 300 }),
    ...shiftOf('sampler', samplersFor(animals * 0.23), { ...late, firstBreak: 540 }),
    ...shiftOf('volunteer', helpers, { ...late, firstBreak: 500 }),
    { role: 'office', training: [], shift: null },
  ]
}

/** A morning whose rush finds part of the samplers on a break and part of them not yet there. */
export function morningPosts(animals: number): Post[] {
  const samplers = Math.max(2, Math.round(animals / 10))
  const away = Math.floor(samplers / 4)
  const resting = Math.max(1, away)
  const [morning, later] = [
    { from: 15, to: 480 },
    { from: 240, to: 720 },
  ]
  return [
    { role: 'lead', training: everything, shift: { from: 0, to: 600, break: null } },
    ...shiftOf('sampler', samplers - resting - away, { ...morning, firstBreak: null }),
    ...Array.from({ length: resting }, () => restingPost(morning)),
    ...shiftOf('sampler', away, { ...later, firstBreak: null }),
    ...shiftOf('volunteer', 2, { ...morning, firstBreak: null }),
    { role: 'office', training: [], shift: null },
  ]
}

function restingPost(shift: { from: number; to: number }): Post {
  return { role: 'sampler', training: ['deer'], shift: { ...shift, break: 160 } }
}

/** Numbers and names for the posts, in the order in which they are added to the log. */
export function crewOf(desk: DeskId, posts: readonly Post[], cast: readonly string[]): CrewPlan[] {
  return posts.map((post, place) => ({
    ...post,
    person: personId(desk, place + 1),
    name: cast[place] ?? `Helper ${place + 1}`,
  }))
}
