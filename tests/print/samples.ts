/** An invented station's data for printing. No name here belongs to anyone. */
import type { CloseSheet } from '../../electron/print/close-sheet.ts'
import type { KitLabel, KitLabelBatch, KitLabels } from '../../electron/print/kit-labels.ts'
import type { ManifestSheet, ManifestedBag } from '../../electron/print/manifest.ts'
import type { SignatureStrokes } from '../../electron/print/signature.ts'
import {
  DeskId,
  animalNumber,
  bagNumber,
  coolerNumber,
  handoffNumber,
  kitNumber,
} from '../../shared-types/sample-number.ts'

export const desk = DeskId.parse('26KRVA')

export const batch: KitLabelBatch = {
  station: 'Kerravale Junction (KRV)',
  date: 'Sat 14 Nov 2026',
  askAt: 'Ask at the wildlife office of your county from 5 December 2026 on.',
  practice: false,
  madeAtMs: Date.UTC(2026, 10, 14, 13, 0),
}

export const everyLabel: readonly KitLabel[] = ['left', 'right', 'obex', 'kit', 'card', 'stub']

export function firstCopies(labels: readonly KitLabel[]): KitLabels['labels'] {
  return labels.map((label) => ({ label, copy: 1 }))
}

export function reservedKit(serial: number): KitLabels {
  return { kit: kitNumber(desk, serial), labels: firstCopies(everyLabel), facts: {} }
}

export function assignedKit(serial: number): KitLabels {
  return {
    kit: kitNumber(desk, serial),
    labels: firstCopies(everyLabel),
    kept: { left: 'fresh', right: 'fresh', obex: 'formalin' },
    facts: {
      animal: animalNumber(desk, 17),
      tag: 'T904417',
      species: 'mule deer',
      sex: 'female',
      ageClass: 'yearling',
      harvestDate: '14 Nov 2026',
      harvestPlace: 'Unit 48, 44.12345 N 110.54321 W',
      headCondition: 'skull plate cut',
      kept: 'fresh',
      sampler: 'no. 3',
    },
  }
}

export const strokes: SignatureStrokes = [
  [
    { x: 0.05, y: 0.5 },
    { x: 0.3, y: 0.1 },
    { x: 0.5, y: 0.9 },
    { x: 0.95, y: 0.4 },
  ],
  [{ x: 0.5, y: 0.5 }],
]

const lead = {
  name: 'Ines Okonedo',
  at: '14 Nov 2026 18:42 MST',
  hand: { how: 'drawn' as const, strokes },
}

export const digest = '2d5e01a318d0f0879ab568c4be289c8b1f64ef8921a53c6277d5e069978baacb'

export const quietDay: CloseSheet = {
  station: 'Kerravale Junction (KRV)',
  desk: 'A',
  date: 'Saturday 14 November 2026',
  practice: false,
  lead,
  counts: [
    { what: 'animals checked in', place: 'station', expected: 58, counted: 58, reason: '' },
    { what: 'kits in stock', place: 'shelf', expected: 40, counted: 40, reason: '' },
  ],
  outcomes: [
    { words: 'both sides', count: 52 },
    { words: 'one side', count: 4 },
    { words: 'none', count: 2 },
  ],
  waits: { medianMinutes: 14.2, ninetiethMinutes: 38 },
  samples: [
    { site: 'left', check: 'lymph node', count: 52 },
    { site: 'left', check: 'unsure', count: 2 },
    { site: 'right', check: 'lymph node', count: 54 },
  ],
  readingsOutside: [],
  placesMissing: 0,
  coolersHere: [],
  amendments: [],
  second: 'Second person Tobias Reed, with their own PIN',
  unfit: [],
  unfitBySampler: true,
  kitsTomorrow: 'About 60 animals. Here: 40. Ask for 35.',
  handover: '',
  chain: { hash: digest, entries: 1432 },
  madeAtMs: Date.UTC(2026, 10, 15, 1, 42),
}

/** Both sides of each kit, kit after kit. */
export function bagsOf(from: number, kits: number): ManifestedBag[] {
  return Array.from({ length: kits }, (_, place) => from + place).flatMap((serial) =>
    (['left', 'right'] as const).map((site) => ({
      bag: bagNumber(desk, serial, site === 'left' ? 'L' : 'R'),
      site,
      species: 'white-tailed deer',
      kept: 'fresh' as const,
      sealedAt: '14 Nov 16:05 MST',
      check: 'lymph node',
      harvest: 'unit 12, head of Dry Fork',
      excursion: false,
    })),
  )
}

export const smallHandoff: ManifestSheet = {
  handoff: handoffNumber(desk, 1),
  station: 'Kerravale Junction (KRV)',
  desk: 'A',
  date: 'Saturday 14 November 2026',
  practice: false,
  courier: { name: 'Tobias Anderle', organisation: 'Ridge Road Freight', vehicle: 'KTR 4471' },
  destination: 'Diagnostic laboratory, receiving dock',
  coolers: [
    {
      cooler: coolerNumber(desk, 3),
      name: 'Blue two',
      kept: 'on ice',
      seal: '0045511',
      celsius: 3.4,
      counted: 6,
      difference: '',
      bags: bagsOf(1, 3),
    },
    {
      cooler: coolerNumber(desk, 4),
      name: 'Red one',
      kept: 'frozen',
      seal: '0045512',
      celsius: -18.25,
      counted: 4,
      difference: '',
      bags: bagsOf(11, 2),
    },
  ],
  condition: '',
  relinquished: lead,
  received: { name: 'Tobias Anderle', at: '', hand: { how: 'on-paper' } },
  supplements: null,
  transport: '',
  dryIceKg: null,
  corrections: [],
  digest,
  data: { name: 'manifest.json', text: '{}\n' },
  madeAtMs: Date.UTC(2026, 10, 15, 2, 5),
}
