/** How being on duty, on a break or off looks: shape and words. */
import type { PersonView } from '../../shared-types/views/people.ts'
import type { ShapeKind } from '../parts/shape.tsx'

export type Duty = PersonView['duty']

export const dutyShapes: Record<Duty, ShapeKind> = { on: 'fine', break: 'soon', off: 'idle' }

export const dutyWords: Record<Duty, string> = {
  on: 'on duty',
  break: 'on a break',
  off: 'off duty',
}
