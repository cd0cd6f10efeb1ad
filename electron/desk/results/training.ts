/** Unsuitable tissue by sampler and side, so that training follows evidence. For leads only. */
import { type ReadableLog } from '../../../db/connection.ts'
import { testedBySampler } from '../../../db/read/told.ts'
import { granted, refused } from '../../../shared-types/result.ts'
import type { PersonId } from '../../../shared-types/sample-number.ts'
import type { TrainingView } from '../../../shared-types/views/results.ts'
import { wilson } from '../../station/proportion.ts'
import type { QueryHandlers } from '../call.ts'
import { namesOf } from '../names.ts'

const level = 0.95

interface Tally {
  readonly tested: number
  readonly unsuitable: number
}

function withShare({ tested, unsuitable }: Tally) {
  const { low, high } = tested === 0 ? { low: 0, high: 1 } : wilson(unsuitable, tested, level)
  return { tested, unsuitable, share: tested === 0 ? 0 : unsuitable / tested, low, high }
}

function trainingView(log: ReadableLog): TrainingView {
  const nameOf = namesOf(log)
  const tallies = testedBySampler(log)
  const rows = tallies.map(({ sampler, site, ...tally }) => {
    const person = sampler as PersonId
    return { sampler: person, name: nameOf(person), site, ...withShare(tally) }
  })
  const sum = (of: keyof Tally) => tallies.reduce((all, tally) => all + tally[of], 0)
  return {
    rows: rows.toSorted((a, b) => b.low - a.low || a.name.localeCompare(b.name)),
    overall: withShare({ tested: sum('tested'), unsuitable: sum('unsuitable') }),
    say: 'Wilson interval of 95%. Where two intervals overlap widely, the difference may be chance; heads also differ: shot, frozen and late ones yield less.',
  }
}

export const trainingQueries = {
  'results.training': ({ log, person }) =>
    person?.role === 'lead'
      ? granted(trainingView(log))
      : refused(
          'role-may-not',
          'How samplers fare is shown to leads only.',
          'Ask a lead to look, with their own PIN.',
        ),
} satisfies Partial<QueryHandlers>
