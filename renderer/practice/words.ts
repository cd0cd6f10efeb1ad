/** The words of live practice on the screen. */
import type { PracticeRole } from '../../shared-types/practice.ts'
import type { ScoreLine } from '../../shared-types/views/practice.ts'

export const roleTiles: Record<PracticeRole, { label: string; hint: string; key: string }> = {
  'check-in': {
    label: 'Check-in',
    hint: 'hunters come to your window; you write down what they say',
    key: '1',
  },
  bench: { label: 'Bench', hint: 'you take the nodes of the animals given to you', key: '2' },
  lead: { label: 'Lead', hint: 'you give animals out and keep the station going', key: '3' },
}

export const practiceWords = {
  begin: 'Practise one role',
  beginHint: 'A live morning of two hours: you do one role, the crew is simulated. Scored.',
  which: 'Which role do you practise?',
  speed: 'How fast does the morning run?',
  speedTile: '{speed}×',
  speedHints: { 1: 'as in life', 5: 'first try', 20: 'six minutes' },
  cars: 'Animals in the morning',
  carsError: 'a whole number from 5 to 120',
  start: 'Begin',
  starting: 'Setting the morning up…',
  begun: 'You practise now. Everyone’s PIN is {pin}.',
  band: 'PRACTICE',
  bandSay: 'You do: {role}. Not real.',
  minute: 'min {minute}/{minutes}',
  come: '{come}/{animals} came',
  paused: 'paused',
  pause: 'Pause',
  goOn: 'Go on',
  slower: 'Slower',
  faster: 'Faster',
  score: 'Score',
  window: 'At your window for {minutes} min',
  windowMore: ', {more} more behind',
  windowEmpty: 'Nobody is at your window.',
  knife: 'Under your knife, {site}:',
  knifeEmpty: 'No animal is in your hands.',
  table: 'On your table:',
  scan: 'Scan {words}',
  told: 'Meanwhile:',
  scoreTitle: '{points} of 100',
  scoreAfter: 'after {minute} of {minutes} min, {come} of {animals} animals',
  scoreAbout:
    'What matters in the record: labels, tissue, waits, variances at the close. Each point lost names the entry that shows it.',
  lost: '−{points}',
  good: 'good',
  entry: 'entry {seq}, {say}',
  noEntry: 'no entry: it was not recorded',
  lostHead: 'Points lost',
  goodHead: 'As it should be',
  nothingLost: 'Nothing was lost.',
  end: 'End the morning',
  ended: 'The morning is over. The log stays open to close the day with.',
} as const

export const lineWords: Record<ScoreLine['is'], string> = {
  facts: 'facts',
  label: 'label',
  tissue: 'tissue',
  wait: 'wait',
  variance: 'variance',
  undone: 'left undone',
}
