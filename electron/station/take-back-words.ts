/** The words of taking back: what was done, and what to do where it cannot be taken back. */
export const takeBackWords = {
  reason: 'a slip, taken back within a minute',
  deeds: {
    'animal.checked-in': '{animal} checked in',
    'animal.amended': '{animal} corrected',
    'animal.assigned': '{animal} given to {name}',
    'animal.put-back': '{animal} put back in the line',
    'animal.left': '{animal} left unsampled',
    'tissue.checked': '{animal}: {site} looked at',
    'tissue.missed': '{animal}: {site} not taken',
    'bag.placed': 'bag put into {name}',
    'bag.taken-out': 'bag taken out of {name}',
    'kits.moved': 'kits moved ({count})',
  },
  nothing: {
    say: 'You did nothing here in the last minute.',
    next: 'Ask the lead to put an older slip right, with a reason.',
  },
  late: {
    say: 'That was more than a minute ago.',
    next: 'Ask the lead to put it right, with a reason.',
  },
  again: {
    say: 'Your last action was already taken back.',
    next: 'Do it again as it should be, or ask the lead.',
  },
  notAlone: {
    say: 'What you did last is not taken back with a key.',
    next: 'Ask the lead to put it right, with a reason.',
  },
  workedOn: {
    say: 'Somebody has gone on with it since.',
    next: 'Ask the lead to put it right, with a reason.',
  },
  coolerShut: {
    say: 'Cooler {name} has been sealed since.',
    next: 'Ask the lead, who may break the seal with a reason.',
  },
  kitsGone: {
    say: 'Some of those kits have moved on since.',
    next: 'Ask the lead to count the kits and put the ledger right.',
  },
  kitsSettled: {
    say: 'A delivery, a loss or spoiled kits are not taken back with a key.',
    next: 'Ask the lead to move them back, with a reason.',
  },
} as const
