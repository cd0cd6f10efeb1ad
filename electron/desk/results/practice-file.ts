/** A laboratory's file to practise on: results of the bags that a practice log has handed off. */
import { bagsAwaiting } from '../../../db/read/told.ts'
import { granted, refused } from '../../../shared-types/result.ts'
import { laboratoryFile } from '../../station/practice/laboratory-file.ts'
import { localDate } from '../../station/local-time.ts'
import type { QueryHandlers } from '../call.ts'

const yearMs = 365 * 86_400_000

export const practiceFileQueries = {
  'results.practiceFile': ({ log, station, now }, { seed }) => {
    if (!station.practice)
      return refused(
        'not-practice',
        'This is a real log: invented results have no place in it.',
        'Open a practice day to learn on.',
      )
    const sent = bagsAwaiting(log).map(({ bag }) => bag)
    if (sent.length === 0)
      return refused(
        'nothing-sent',
        'No bag of this practice log waits for a result.',
        'Hand the coolers to a courier first (handoff screen).',
      )
    const { text, planted } = laboratoryFile({
      seed,
      sent,
      tooEarly: localDate(now - yearMs, station.zone),
      tested: localDate(now, station.zone),
    })
    const name = `practice-results-${seed}.csv`
    const told = planted.map(({ line, doubt }) => ({ line, doubt }))
    return granted({ file: { name, text }, rows: text.trim().split('\r\n').length, planted: told })
  },
} satisfies Partial<QueryHandlers>
