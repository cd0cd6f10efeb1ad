import type { Folds } from './fold.ts'
import { patch, put } from './row-write.ts'

/** The crew: who they are, when they work, whether they are on duty. */
export const peopleFolds = {
  'person.added': ({ body }) => [
    put('person', {
      person: body.person,
      name: body.name,
      role: body.role,
      training: JSON.stringify(body.training),
      active: 1,
      duty: 'off',
    }),
  ],
  'person.changed': ({ body }) => [
    patch(
      'person',
      { person: body.person },
      {
        name: body.name,
        role: body.role,
        training: JSON.stringify(body.training),
        active: body.active ? 1 : 0,
      },
    ),
  ],
  'pin.set': () => [],
  'person.signed-in': () => [],
  'shift.planned': ({ body }) => [
    put('shift', {
      person: body.person,
      date: body.date,
      from_time: body.from,
      to_time: body.to,
    }),
  ],
  'duty.changed': ({ at, body }) => [
    patch('person', { person: body.person }, { duty: body.duty, duty_ms: at.wall }),
  ],
} satisfies Partial<Folds>
