/**
 * One page for each role: printed, and read on the screen. The keys named here are compared with the
 * screens' own by a test. Cautions name their source; local rules come first.
 */
import { z } from 'zod'

/** Who a guide is for. Office and courier share one: both receive. */
export const GuideFor = z.enum(['lead', 'sampler', 'volunteer', 'receiving'])
export type GuideFor = z.infer<typeof GuideFor>

export interface GuidePart {
  readonly title: string
  readonly lines: readonly string[]
}

export interface Guide {
  readonly title: string
  readonly about: string
  readonly parts: readonly GuidePart[]
  readonly cautions: GuidePart
}

const knives: GuidePart = {
  title: 'Cautions',
  lines: [
    'Cut away from the hand that holds, with a cut-resistant glove under the other (common practice). Gloves and eye protection on; keep off brain and spine; no knives from home (CDC, cdc.gov/prions/cwd/prevention.html).',
    'Tools before the next animal: take all tissue off first, then 5 minutes in 2 parts household bleach to 3 parts water, 40% by volume, and rinse (Williams 2019, PLoS ONE 14(10): e0223659). Bleach burns: gloves, eye protection, open air, nothing else mixed in.',
    'Some programmes mix bleach otherwise, and all have rules of their own: yours come first.',
  ],
}

export const guides: Readonly<Record<GuideFor, Guide>> = {
  lead: {
    title: 'The station lead’s day',
    about: 'You open the day, keep the line moving, decide what the desk only suggests, and sign.',
    parts: [
      {
        title: 'Before the first car',
        lines: [
          'F10: open the day with the kits and blank labels delivered. Check the clock against a watch.',
          'F10: put samplers on duty. F6: hand out kits. F7: open the coolers and print their labels.',
          'Choose a second disk for backups, if none is chosen.',
        ],
      },
      {
        title: 'While cars come',
        lines: [
          'F2: the band on top says what needs you now. The first row is next in turn.',
          'Enter on an animal gives it to a sampler. The desk suggests whom; you decide.',
          'Watch kits in hand: a shape and a number say who runs out.',
          'A cooler is read every four hours at least.',
        ],
      },
      {
        title: 'At dusk',
        lines: [
          'F8: everything is counted by hand, then each variance explained, then you and a second person sign.',
          'F9: begin a handoff with sealed coolers, scan them out, sign with the courier. Print the manifest.',
          'Write a few words for the next lead.',
        ],
      },
      {
        title: 'When something is wrong',
        lines: [
          'Ctrl+U takes back your own last action within a minute. The rest goes through you: put back, discard, break a seal, reopen, always with a reason.',
          'F1 opens help, the keys of the screen, and the page of a refusal.',
        ],
      },
    ],
    cautions: knives,
  },
  sampler: {
    title: 'The sampler’s work',
    about: 'Left and right node of one animal, each in its own bag, under its own label.',
    parts: [
      {
        title: 'One animal',
        lines: [
          'F4: take the next animal. Check its tag against the screen.',
          'Scan the data card of a kit onto it. One kit, one animal.',
          'Find the node behind the jaw and in front of the spine, one on each side of the throat.',
          'Cut it across and look. Say what you see: only then can a bag be sealed.',
          'Seal the bag and scan it. Left is the animal’s own left.',
          'Not there? Record the side as not taken, with the reason. Then finish.',
        ],
      },
      {
        title: 'What you hold',
        lines: [
          'Lymph node: firm but giving, smooth, a bean’s outline, 21 to 24 mm, tan to pale red; paler spots under the rim of the cut face (common practice).',
          'Salivary gland: small lobes, like chewed gum (North Dakota GF). Muscle: even fibres. Fat: pale, soft, greasy. None of them can be tested.',
          'Unsure? Ask the lead. Bag it as unsure rather than lose it.',
        ],
      },
      {
        title: 'Kits and coolers',
        lines: [
          'Record kits when you pick them up and bring them back (F6).',
          'F7: scan the cooler, then each bag as it goes in, within half an hour.',
          'Ctrl+U takes back a slip within a minute. After that, ask the lead.',
        ],
      },
    ],
    cautions: knives,
  },
  volunteer: {
    title: 'The volunteer’s work',
    about: 'You meet the hunter: what you write down decides whether the sample can be tested.',
    parts: [
      {
        title: 'Check-in, one animal',
        lines: [
          'Ctrl+L: sign in with your own PIN.',
          'F3: read the tag from the tag. Ask the hunter’s number, species, sex, age, day of harvest.',
          'Ask where it was taken, as precisely as the screen wants. No usable place, no test.',
          'Ask whether the hunter agrees to the head or throat being cut.',
          'F12 checks it in. Tell the hunter the number and the wait that the screen shows.',
          'Ctrl+P prints the labels. Put the kit with the animal. Give the hunter the stub.',
        ],
      },
      {
        title: 'Also yours',
        lines: [
          'F6: hand out kits, reprint a damaged label, destroy the old copy.',
          'F7: put bags into coolers by scanning, read temperatures in degrees Celsius.',
          'F8: count by hand at dusk. Count before you look at what is expected.',
        ],
      },
      {
        title: 'When something is wrong',
        lines: [
          'Ctrl+U takes back your last action within a minute: a check-in, a bag in a cooler, kits given.',
          'A message says what is wrong and what to do next. F1 tells why.',
          'Anything older: ask the lead.',
        ],
      },
    ],
    cautions: {
      title: 'Cautions',
      lines: [
        'Gloves on when you touch a carcass or a head. Keep clear of knives at work (common practice).',
        'Tell the hunter: keep the meat apart and wait for the result before eating it; do not eat meat of an animal that tests positive; “not detected” is no promise (CDC, cdc.gov/prions/cwd/prevention.html).',
        'Local health advice and the rules of your agency come first.',
      ],
    },
  },
  receiving: {
    title: 'For courier and office',
    about:
      'You receive: coolers at dusk, logs at the end. Take over only what agrees with its paper.',
    parts: [
      {
        title: 'Courier, at the station',
        lines: [
          'See each cooler scanned out: its seal, its temperature, the bags counted.',
          'Compare seal numbers with the manifest. A broken or different seal is written down before you sign.',
          'Sign, and take the manifest on paper. The record names you and the time.',
          'Keep the coolers in sight or locked up until they are handed on (EPA manual 905R78115 of 1978).',
        ],
      },
      {
        title: 'Office, with the logs',
        lines: [
          'Ask for the log of every desk, on a stick. Merge them all; order does not matter.',
          'F12: settle what the merged record cannot: a tag on two animals, a bag in two coolers.',
          'Enter the laboratory’s counter-scan.',
          'F11: read the laboratory’s results in; rows that do not match wait for a person. Follow detections up first, then tell the others.',
          'A practice day is marked for ever and cannot be merged into a real record.',
        ],
      },
      {
        title: 'When something is wrong',
        lines: [
          'A manifest is corrected by a further one that names the first. Nothing is rubbed out.',
          'Any log can be verified: an entry taken out or altered is found.',
        ],
      },
    ],
    cautions: {
      title: 'Cautions',
      lines: [
        'Three layers: sealed bag, leakproof bag around it, rigid cooler (49 CFR 173.199). Dry ice must vent; by air its net mass stands on the outside (49 CFR 173.217).',
        'Dry ice freezes skin and takes the air in a closed car: gloves, open windows (common practice).',
        'Carriers and laboratories class these tissues differently: theirs and local rules come first.',
      ],
    },
  },
}
