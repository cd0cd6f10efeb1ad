/** The words of live practice: what hunters say, what lies under the knife, why points were lost. */
import type { TissueCheck } from '../../../../shared-types/tissue.ts'

export const hunterWords = {
  tag: '“The tag reads {tag}. My hunter number is {hunter}.”',
  animal: '“It is {species}, {sex}, {age}. Taken {harvested}.”',
  age: {
    young: 'this year’s young; the lower jaw has fewer than six cheek teeth',
    yearling: 'a yearling; the third cheek tooth has three cusps',
    adult: 'grown; the third cheek tooth has two worn cusps',
  },
  sex: { male: 'a male', female: 'a female', unknown: 'and I cannot tell the sex' },
  unit: '“I took it in unit {unit}, {place}.”',
  coordinates: '“My receiver says {latitude}, {longitude}, in unit {unit}.”',
  notKnown: '“Where? Somewhere up there. I could not say.”',
  carcass: '“The whole animal is in the truck{faults}.”',
  headOnly: '“I brought the head only{faults}.”',
  given: '“Yes, go ahead and cut.”',
  refused: '“No, I do not want it cut.”',
} as const

/** Common practice, no source, except the gland: North Dakota GF, sampling kit page. */
export const feels: Record<TissueCheck, string> = {
  'lymph-node': 'Firm but giving, smooth, a bean’s outline. Paler spots in a row under the rim.',
  'salivary-gland': 'It falls into small lobes, like chewed gum.',
  muscle: 'Red all over, with even fibres.',
  fat: 'Pale, soft, greasy between the fingers.',
  obex: 'The V on the brainstem, in one piece.',
  unsure: 'Dark and torn: the rim cannot be told from the middle.',
}

export const missedFeels = {
  'not-found': 'You have looked twice: there is no node on this side.',
  'shot-away': 'The bullet went through here: nothing is left of it.',
  'cut-away': 'Whoever took the head off cut through here: it is gone.',
  spoiled: 'It comes apart and smells: this cannot be tested.',
  'frozen-head': 'Frozen hard: the knife does not go in.',
  'consent-withdrawn': 'The hunter says no after all.',
  other: 'It cannot be taken.',
} as const

export const tableWords = {
  card: 'data card',
  left: 'bag, left',
  right: 'bag, right',
  obex: 'bag, obex',
} as const

export const taskWords = {
  given: 'Five kits went from stock into the hands of {name}. Record it (F6).',
  spoiled: 'You dropped one of your kits into the mud. Record it as spoiled (F6).',
  delivered: 'A box of 40 kits came from the office. Take it in (F6).',
  asks: '{name} has no kit left and asks for some (F6).',
} as const

export const factWords = {
  tag: 'tag',
  hunter: 'hunter number',
  species: 'species',
  sex: 'sex',
  age: 'age',
  harvested: 'day of harvest',
  place: 'place of harvest',
  head: 'condition of the head',
  consent: 'consent',
} as const

export const scoreWords = {
  fact: '{animal}: the {fact} is not what the hunter said.',
  rightFacts: '{animal}: everything as the hunter said.',
  notCheckedIn: 'A hunter with tag {tag} was never checked in.',
  windowWait: '{animal}: the hunter stood at the window for {minutes} min; the aim is {aim}.',
  missedNode: '{animal}: there was a {site} to take, and it was recorded as not taken.',
  wrongTissue: '{animal}: what was called {called} at the {site} was {was}.',
  rightTissue: '{animal}: the {site} was seen for what it was.',
  stopped: 'The desk stopped a wrong label: {say}',
  benchWait: '{animal}: {minutes} min on the bench; the aim is {aim}.',
  lineWait: '{animal}: waited {minutes} min; the target is {aim}.',
  stillWaits: '{animal}: still waiting after {minutes} min; the target is {aim}.',
  inTime: '{animal}: waited {minutes} min, within the target.',
  untold: 'Not recorded: {task} The close would be off by {count}.',
  recorded: 'Recorded as it happened: {task}',
  undone: '{animal}: still in your hands at the end.',
} as const
