import { countItemKey } from '../../shared-types/close.ts'
import { stationItemKey } from '../../shared-types/station-close.ts'
import type { Folds } from './fold.ts'
import { put, remove } from './row-write.ts'

/** What people counted at dusk, how they explain the differences, and what they leave to be known. */
export const closeFolds = {
  'count.entered': ({ hash, desk, at, by, body }) => {
    const key = countItemKey(body.item)
    const { date, counted, bags } = body
    return [
      put('count', { desk, date, key, counted, bags: bags && JSON.stringify(bags) }),
      put('count_try', { hash, desk, date, key, counted, by, ms: at.wall }),
      // A reason was given for what was counted before, and for nothing else.
      remove('variance', { desk, date, key }),
    ]
  },
  'variance.explained': ({ desk, body }) => [
    put('variance', {
      desk,
      date: body.date,
      key: countItemKey(body.item),
      expected: body.expected,
      counted: body.counted,
      reason: body.reason,
      words: body.words,
    }),
  ],
  'station.variance-explained': ({ body }) => {
    const { station, date, item, expected, counted, reason, words } = body
    const key = stationItemKey(item)
    return [put('station_variance', { station, date, key, expected, counted, reason, words })]
  },
  'station.closed': ({ hash, at, body }) => [
    put('station_close', {
      station: body.station,
      date: body.date,
      hash,
      ms: at.wall,
      sheet: JSON.stringify(body),
    }),
  ],
  'handover.written': ({ desk, at, by, body }) => [
    put('handover', { desk, date: body.date, words: body.words, by, ms: at.wall }),
  ],
} satisfies Partial<Folds>
