/** The board outside: hunters see their number move up, and nothing about one another. */
import { animalsInLine } from '../../db/read/animals.ts'
import { granted } from '../../shared-types/result.ts'
import { waits } from '../station/figures.ts'
import { orderLine } from '../station/line.ts'
import type { QueryHandlers } from './call.ts'
import { figuresOfDay } from './line.ts'

export const boardQueries = {
  board: ({ log, station, now }) => {
    const inLine = animalsInLine(log)
    const waiting = inLine.filter(({ state }) => state === 'waiting').toSorted(orderLine)
    return granted({
      station: station.name,
      zone: station.zone,
      practice: station.practice,
      nowMs: now,
      waiting: waiting.map(({ animal, arrivedMs }) => ({ animal, arrivedMs })),
      working: inLine.filter(({ state }) => state === 'with-sampler').map(({ animal }) => animal),
      usualWaitMinutes: waits(figuresOfDay(log)).medianMinutes,
    })
  },
} satisfies Partial<QueryHandlers>
