import type { Folds } from './fold.ts'
import { patch, put } from './row-write.ts'

/** The station, its settings and its days. */
export const stationFolds = {
  'station.set-up': ({ desk, at, body }) => [
    put('station', {
      desk,
      name: body.name,
      zone: body.zone,
      practice: body.practice ? 1 : 0,
      settings: JSON.stringify(body.settings),
      set_up_ms: at.wall,
    }),
  ],
  'settings.changed': ({ desk, body }) => [
    patch('station', { desk }, { settings: JSON.stringify(body.settings) }),
  ],
  'clock.accepted': () => [],
  'day.opened': ({ desk, at, body }) => [
    put('day', {
      desk,
      date: body.date,
      state: 'open',
      blank_labels: body.blankLabels,
      opened_ms: at.wall,
    }),
  ],
  'day.closed': ({ desk, at, body }) => [
    patch(
      'day',
      { desk, date: body.date },
      { state: 'closed', closed_ms: at.wall, closed_by: body.lead, sheet: JSON.stringify(body) },
    ),
  ],
  'day.reopened': ({ desk, at, body }) => [
    patch('day', { desk, date: body.date }, { state: 'open', reopened_ms: at.wall }),
  ],
} satisfies Partial<Folds>
