/** Which reasons make sense for a variance: they depend on what was counted, and on the side it is off to. */
import type { CountItem, VarianceReason } from '../../shared-types/close.ts'
import type { StationItem } from '../../shared-types/station-close.ts'

type Counted = CountItem['of'] | StationItem['of']

const kitsShort: readonly VarianceReason[] = [
  'miscounted-during-day',
  'given-away',
  'spoiled-not-recorded',
  'used-not-recorded',
  'lost',
  'wrong-opening-count',
  'not-given-back',
  'other-desk',
  'other',
]
const kitsOver: readonly VarianceReason[] = [
  'miscounted-during-day',
  'found',
  'wrong-opening-count',
  'other-hands',
  'other-desk',
  'other',
]

/** The last of each list is `other`, which needs words. */
export function reasonsFor(of: Counted, variance: number): readonly VarianceReason[] {
  const isShort = variance <= 0
  switch (of) {
    case 'animals':
      return ['miscounted-during-day', 'other-desk', 'other']
    case 'bags':
      return isShort
        ? ['miscounted-during-day', 'lost', 'other-desk', 'other']
        : ['miscounted-during-day', 'found', 'other-desk', 'other']
    case 'kits-in-stock':
      return (isShort ? kitsShort : kitsOver).filter((reason) => reason !== 'not-given-back')
    case 'kits':
    case 'kits-in-hand':
      return isShort ? kitsShort : kitsOver
    case 'blank-labels':
      return isShort
        ? [
            'miscounted-during-day',
            'given-away',
            'spoiled-not-recorded',
            'used-not-recorded',
            'lost',
            'wrong-opening-count',
            'other-desk',
            'other',
          ]
        : ['miscounted-during-day', 'found', 'wrong-opening-count', 'other-desk', 'other']
    case 'unused-kit-labels':
      return isShort
        ? [
            'miscounted-during-day',
            'spoiled-not-recorded',
            'used-not-recorded',
            'lost',
            'other-desk',
            'other',
          ]
        : ['miscounted-during-day', 'found', 'other-desk', 'other']
  }
}
