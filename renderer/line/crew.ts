/** The crew as the lead reads it: free people first, then those at work, on a break, off duty. */
import type { CallOutput } from '../../shared-types/desk-api.ts'
import type { ShapeKind } from '../parts/shape.tsx'

export type CrewMember = CallOutput<'line'>['crew'][number]

export type CrewState = 'free' | 'working' | 'break' | 'off'

export const crewWords: Record<CrewState, string> = {
  free: 'free',
  working: 'working',
  break: 'on a break',
  off: 'off duty',
}

export const crewShapes: Record<CrewState, ShapeKind> = {
  free: 'fine',
  working: 'busy',
  break: 'idle',
  off: 'idle',
}

export function crewState(member: Pick<CrewMember, 'duty' | 'animals'>): CrewState {
  if (member.duty === 'off' || member.duty === 'break') return member.duty
  return member.animals.length === 0 ? 'free' : 'working'
}

const order: readonly CrewState[] = ['free', 'working', 'break', 'off']

/** Free first, of these whoever has kits to work with; else as the desk gave them. */
export function orderCrew(crew: readonly CrewMember[]): CrewMember[] {
  const place = (member: CrewMember) => order.indexOf(crewState(member))
  return crew.toSorted((a, b) => place(a) - place(b) || Number(a.kits === 0) - Number(b.kits === 0))
}

/** Few kits are worth a warning in hands that sample: on duty, and a lead only with kits or an animal. */
export function kitWarning(member: CrewMember): CrewMember['kitsLow'] {
  const { duty, role, kits, animals, kitsLow } = member
  const isSampling = duty === 'on' && (role !== 'lead' || kits > 0 || animals.length > 0)
  return isSampling ? kitsLow : 'enough'
}

/** Beside the number of kits in hand. */
export const kitWords: Record<CrewMember['kitsLow'], string> = {
  enough: 'kits',
  low: 'kits, low',
  none: 'no kits',
}
