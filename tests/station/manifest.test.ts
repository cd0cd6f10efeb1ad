import { expect, test } from 'vitest'
import { manifestOf, type ManifestView } from '../../electron/station/manifest.ts'
import type { HandoffRecord } from '../../shared-types/handoff.ts'
import { Manifest } from '../../shared-types/manifest.ts'
import { handoffNumber } from '../../shared-types/sample-number.ts'
import { settings } from '../support/station.ts'
import { bag, cooler, desk, lead, minutes, morning } from './records.ts'

const north = cooler(1, { state: 'sealed', seal: 'K-10442' })
const south = cooler(2, { state: 'sealed', seal: 'K-10443', keeping: 'frozen' })
const scanned = { seal: 'K-10442', celsius: 4.5, counted: 2, expected: 2, words: '', ms: morning }

const handoff: HandoffRecord = {
  handoff: handoffNumber(desk, 1),
  destination: 'Basin Animal Disease Laboratory',
  state: 'loading',
  begunMs: morning,
  signed: null,
  supplements: null,
  classed: null,
  packed: null,
  coolers: [
    { cooler: north.cooler, scanned },
    {
      cooler: south.cooler,
      scanned: {
        ...scanned,
        seal: 'K-10443',
        celsius: -18,
        counted: 0,
        expected: 1,
        words: 'torn',
      },
    },
  ],
}

const listed = (serial: number, check: 'lymph-node' | null = 'lymph-node') => ({
  ...bag(serial, { sealedMs: morning + minutes(serial) }),
  species: 'elk' as const,
  check,
  harvest:
    serial === 2
      ? ({ by: 'not-known' } as const)
      : ({ by: 'unit', unit: '31', place: 'Ash Creek' } as const),
  excursion: serial === 3,
})

const view: ManifestView = {
  station: {
    desk,
    name: 'Cinder Gap',
    zone: 'America/Denver',
    practice: false,
    office: false,
    settings,
  },
  handoff,
  lead,
  courier: { name: 'Tam Ridley', organisation: 'Basin Couriers', vehicle: 'van 7' },
  handedOverMs: morning + minutes(600),
  coolers: [
    { ...north, inside: [listed(1), listed(2, null)] },
    { ...south, inside: [listed(3)] },
  ],
}

test('the manifest says what each cooler holds, bag by bag, as it was read on the way out', () => {
  const manifest = manifestOf(view)
  expect(Manifest.parse(manifest)).toEqual(manifest)
  expect(manifest).toMatchObject({
    station: 'Cinder Gap',
    handedOverAt: '2026-11-14T16:30:00-07:00',
    lead: { name: 'Orla Vance' },
    bags: 3,
  })
  expect(manifest.coolers[0]).toMatchObject({ seal: 'K-10442', celsius: 4.5, counted: 2 })
  expect(manifest.coolers[0]?.bags[0]).toMatchObject({
    bag: bag(1).bag,
    side: 'left',
    species: 'elk',
    check: 'lymph-node',
    sealedAt: '2026-11-14T06:31:00-07:00',
  })
})

test('a cooler that differs from its list says so, and how', () => {
  expect(manifestOf(view).coolers[1]).toMatchObject({
    counted: 0,
    difference: 'torn',
    celsius: -18,
  })
  expect(manifestOf(view).coolers[0]?.difference).toBe('')
})

test('a bag that lay in an excursion is marked, and no other', () => {
  const bags = manifestOf(view).coolers.flatMap((each) => each.bags)
  expect(bags.map(({ excursion }) => excursion)).toEqual([false, false, true])
})

test('tissue nobody named is given as unsure, not as a node', () => {
  expect(manifestOf(view).coolers[0]?.bags[1]?.check).toBe('unsure')
})

test('no manifest lists a cooler that was not scanned out: that would be a fault of the desk', () => {
  const unread = { ...handoff, coolers: [{ cooler: north.cooler, scanned: null }] }
  expect(() => manifestOf({ ...view, handoff: unread })).toThrow('not scanned out')
})

test('each bag says where its animal was taken, and a place that nobody knows is left empty', () => {
  const bags = manifestOf(view).coolers.flatMap((each) => each.bags)
  expect(bags.map(({ harvest }) => harvest)).toEqual([
    'unit 31, Ash Creek',
    '',
    'unit 31, Ash Creek',
  ])
})
