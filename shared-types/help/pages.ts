/** The help pages: each a title, what it is about, and what to do, in the order of doing it. */

export interface HelpPage {
  readonly title: string
  readonly about: string
  readonly steps: readonly string[]
}

export const helpPages = {
  slips: {
    title: 'Slips and corrections',
    about:
      'Nothing in the log is ever rubbed out. A slip is put right by a further entry that says so, and both stay readable.',
    steps: [
      'Within a minute, Ctrl+U takes back your own last action, where tissue, paper or a signature does not depend on it.',
      'A wrong fact of an animal is corrected from its story, with a few words why.',
      'Everything else goes through the lead, who can put back, discard, break a seal or reopen a day with a reason.',
    ],
  },
  people: {
    title: 'Signing in, and who may do what',
    about:
      'Each entry carries the name of whoever made it, so each person signs in with their own PIN before they act.',
    steps: [
      'Press Ctrl+L, scan your badge or choose your tile, and type your PIN.',
      'If the desk says that your role may not do it, the person it names does it under their own PIN.',
      'A forgotten PIN is set again by the lead on the station screen.',
    ],
  },
  'check-in': {
    title: 'Checking an animal in',
    about:
      'The record of an animal begins with its tag, its hunter and the place of harvest. A sample without a usable place is commonly not tested.',
    steps: [
      'Read the tag from the tag itself, never from memory.',
      'Ask where the animal was taken, as precisely as the station wants it.',
      'Ask whether the hunter agrees to the head or throat being cut.',
      'If the tag is here already, compare both animals before anything else is done.',
    ],
  },
  line: {
    title: 'The line',
    about:
      'The line shows who waits longest, who is free, and whose kits run out. The desk suggests; the lead decides.',
    steps: [
      'An animal can be given to anyone on duty who is trained for it.',
      'An animal that has sealed bags cannot go back or leave: finish it instead.',
      'Put people on duty, or on a break, on the station screen.',
    ],
  },
  bench: {
    title: 'At the bench',
    about:
      'One animal, one kit, one bag for each side. The scan of the bag proves that the right label is on the right tissue.',
    steps: [
      'Take an animal, then scan the data card of a kit onto it.',
      'Look at the cut face and say what you see before you bag it.',
      'Scan the bag you sealed. Left is the left side of the animal, not yours.',
      'Record a side that cannot be taken, with its reason, then finish.',
      'Never swap labels between bags. A wrong bag is put aside for the lead.',
    ],
  },
  kits: {
    title: 'Kits and their ledger',
    about:
      'Every kit is always in exactly one place by the ledger: stock, somebody’s hands, used, spoiled, sent or missing.',
    steps: [
      'Record kits as they are picked up and brought back (F6).',
      'If the ledger says that hands are empty and they are not, count them and record the pick-up.',
      'Only the lead takes deliveries in and writes kits off as missing.',
    ],
  },
  labels: {
    title: 'Labels and printing',
    about:
      'A number is printed once. A second copy is a reprint: the first copy is void before the second exists.',
    steps: [
      'Reprint a damaged label on the kits screen, and destroy the old copy.',
      'A label that the log calls void is never stuck on anything.',
      'After a jam, scan the last label that came out good (kits screen, Jam): the rest comes out from the next one on.',
    ],
  },
  coolers: {
    title: 'Coolers and seals',
    about: 'A bag is always in exactly one place, and a sealed cooler stays shut.',
    steps: [
      'Scan the cooler, then each bag as it goes in.',
      'Tissue in formalin never freezes and has a cooler of its own at room temperature.',
      'A seal is broken only by the lead, with a reason; the cooler then gets a new seal.',
      'Read the temperature at least every four hours, in degrees Celsius.',
    ],
  },
  close: {
    title: 'Closing the day',
    about:
      'At dusk everything is counted by hand, and each difference from the log is explained before the lead signs.',
    steps: [
      'Count first, then look at what the log expects.',
      'Count again where a number looks absurd: a second look is quicker than a wrong explanation.',
      'Explain each variance in a few words; the desk names its likely causes.',
      'The lead and a second person sign with their PINs.',
    ],
  },
  handoff: {
    title: 'Handing off to the courier',
    about:
      'The manifest says what left. It is signed only when cooler, seal and count agree with it.',
    steps: [
      'Begin a handoff with sealed coolers only.',
      'Scan each cooler out: its seal, its temperature, the bags counted.',
      'A difference is explained in words before anyone signs.',
      'After signing, a manifest is corrected by a further one that names the first.',
    ],
  },
  merging: {
    title: 'Merging logs at an office',
    about:
      'Logs of many desks become one. The order of the files does not matter, and nothing is dropped.',
    steps: [
      'Bring the logs on a stick or in a folder, and merge them all.',
      'What the merged record cannot settle by itself is listed as a discrepancy for a person.',
      'A practice day can never be merged into a real record.',
    ],
  },
  safekeeping: {
    title: 'Backups, moves and contacts',
    about:
      'What the desk confirmed is on its disk. A backup on a second disk saves it when the laptop is lost.',
    steps: [
      'Choose a stick or disk for backups on the station screen, and try a backup once.',
      'A desk lives on one laptop at a time: move it with “move the desk”, never by copying files.',
      'Contacts of hunters are kept apart, locked, and can be erased after results are told.',
    ],
  },
  clock: {
    title: 'The laptop’s clock',
    about: 'Waits, hold times and the order of entries hang on the clock.',
    steps: [
      'Compare the laptop’s clock with a watch.',
      'If the laptop is wrong, put it right in its own settings and do the action again.',
      'If the log is wrong, the lead accepts the clock on the station screen.',
    ],
  },
  day: {
    title: 'Opening and reopening a day',
    about: 'Animals, kits and counts belong to a station day, which the lead opens and closes.',
    steps: [
      'The lead opens the day on the station screen, with the kits and labels delivered.',
      'The day before must be closed first.',
      'A closed day is reopened by the lead with a reason, and signed again.',
    ],
  },
  files: {
    title: 'Files and disks',
    about:
      'A station log is one file on this laptop. The desk never writes over a file that is there.',
    steps: [
      'Make room on the disk, or choose another place, and do it again.',
      'A log that is open elsewhere is closed there first.',
      'A log of a newer version is read here, and worked in after an update.',
      'If the file was moved while the desk was open, it goes on in a rescued copy: do the last action again.',
    ],
  },
  entry: {
    title: 'What was typed',
    about: 'The desk checks each number and text before anything is written.',
    steps: [
      'Scan rather than type: a scan has its check character tested.',
      'Typed, a number is compared with the label character by character.',
      'Fill in the field that the message names.',
    ],
  },
  results: {
    title: 'Receipts, results and coverage',
    about: 'What a laboratory counted or reported is read beside what the log says was sent.',
    steps: [
      'Use the file as it came; say which column is what.',
      'Rows that do not match stay listed until a person settles them.',
      'While a row about an animal is in doubt, its result is told to nobody; a detection always is.',
      'A changed result is a further entry; hunters who were told the one before are told anew.',
      'Detections are followed up first, with the agency’s veterinarian.',
      '“Not detected” speaks of the tissue tested and is no promise about the meat.',
    ],
  },
} as const satisfies Record<string, HelpPage>

export type HelpPageName = keyof typeof helpPages
