/** What an office would send beside a practice day: outlines of units and its numbers of herds, invented. */
import { practiceHerds, practiceOutlines } from '../../station/practice/unit-outlines.ts'
import type { TextFile } from '../../../shared-types/views/common.ts'

export const officePapers: readonly TextFile[] = [
  { name: 'practice-units.geojson', text: practiceOutlines },
  { name: 'practice-units.csv', text: practiceHerds },
]
