import type { DeskId } from '../../shared-types/sample-number.ts'
import type { StationSetUp } from '../../shared-types/station.ts'
import type { Folds } from './fold.ts'
import { patch, put } from './row-write.ts'

function deskRow(desk: DeskId, wall: number, body: StationSetUp, office: 0 | 1) {
  return put('station', {
    desk,
    name: body.name,
    zone: body.zone,
    practice: body.practice ? 1 : 0,
    office,
    settings: JSON.stringify(body.settings),
    set_up_ms: wall,
  })
}

/** The station, its settings and its days; and the office that merges them. */
export const stationFolds = {
  'station.set-up': ({ desk, at, body }) => [deskRow(desk, at.wall, body, 0)],
  'office.set-up': ({ desk, at, body }) => [deskRow(desk, at.wall, body, 1)],
  'settings.changed': ({ desk, body }) => [
    patch('station', { desk }, { settings: JSON.stringify(body.settings) }),
  ],
  'clock.accepted': ({ hash, body }) => [
    put('clock_put_back', { hash, wall_ms: body.wallMs, last_ms: body.lastMs }),
  ],
  'day.opened': ({ desk, at, body }) => [
    put('day', {
      desk,
      date: body.date,
      state: 'open',
      blank_labels: body.blankLabels,
      opened_ms: at.wall,
    }),
  ],
  'day.closed': ({ hash, desk, at, body }) => [
    patch(
      'day',
      { desk, date: body.date },
      {
        state: 'closed',
        closed_ms: at.wall,
        closed_by: body.lead,
        sheet: JSON.stringify(body),
        close_hash: hash,
      },
    ),
  ],
  'day.reopened': ({ desk, at, body }) => [
    patch('day', { desk, date: body.date }, { state: 'open', reopened_ms: at.wall }),
  ],
} satisfies Partial<Folds>
