/** Why blank or printed labels are not as many as the log has. */
import { grouped } from '../../../shared-types/sample-number.ts'
import type { Cause } from '../../../shared-types/views/cause.ts'
import type { Variance } from '../likely-cause.ts'

/** A label given up as lost was printed again, and the first one turned up. */
export function unusedLabelCauses({ item, off, evidence }: Variance): Cause[] {
  if (off <= 0) return []
  const lost = evidence.reprinted.filter(({ reason }) => reason === 'lost')
  return lost.map(
    ({ number, copy, at }): Cause => ({
      code: 'label-printed-twice',
      about: number,
      evidence: lost.length === off ? 90 : 65,
      say: `Label ${grouped(number)} was given up as lost at ${at} and printed twice: copy ${copy} seems to have turned up.`,
      next: `Find copy ${copy} among the loose labels and tear it up: it is void.`,
      look: { screen: 'kits', number },
      settle: {
        command: 'variance.explain',
        input: {
          item: item.item,
          reason: 'found',
          words: `copy ${copy} of label ${grouped(number)} turned up and was torn up`,
        },
      },
    }),
  )
}

/** A label jammed in the printer: more blank labels went with it than were printed again. */
export function blankCauses({ item, off, evidence }: Variance): Cause[] {
  if (off >= 0) return []
  const jams = evidence.reprinted.filter(({ reason }) => reason === 'jammed')
  return jams.map(
    ({ number, at }): Cause => ({
      code: 'sheet-jammed',
      about: number,
      evidence: jams.length === 1 ? 85 : 65,
      say: `The printer jammed on label ${grouped(number)} at ${at}: the blank labels beside it may have been thrown away.`,
      next: 'Look beside the printer and in the waste.',
      look: { screen: 'kits', number },
      settle: {
        command: 'variance.explain',
        input: {
          item: item.item,
          reason: 'spoiled-not-recorded',
          words: `thrown away with label ${grouped(number)}, which jammed`,
        },
      },
    }),
  )
}
