/** The words of the help dialog itself; its pages and guides are in shared-types/help. */
import type { GuideFor } from '../../shared-types/help/guides.ts'

export const helpWords = {
  help: 'Help',
  title: 'Help',
  why: 'Why?',
  refusalHead: 'Why the desk refused',
  refusalCode: 'Code of this refusal: {code}',
  keysHead: 'Keys here, now',
  keysNote: 'Made from what this screen answers to at this moment.',
  everywhere: 'Everywhere',
  withFocus: 'with the focus in it',
  alwaysHead: 'Always',
  pagesHead: 'Pages',
  guidesHead: 'One-page guides to print',
  tourAgain: 'Show the tour again',
  back: 'All help',
} as const

/** Keys that fields, lists and browsers answer to by themselves. */
export const alwaysKeys: readonly (readonly [key: string, words: string])[] = [
  ['Tab', 'the next field or button; with Shift, the one before'],
  ['Enter', 'does what the main button of the form says'],
  ['↑ ↓', 'moves along a list or a choice'],
  ['Space', 'picks a tile'],
  ['Esc', 'closes what is open; with nothing open, the line'],
  ['scan', 'a label is read wherever the focus is'],
]

export const guideWords: Record<GuideFor, string> = {
  lead: 'Station lead',
  sampler: 'Sampler',
  volunteer: 'Volunteer',
  receiving: 'Courier and office',
}
