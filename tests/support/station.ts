/** An invented station: what its lead settled, and the animals that come to it. */
import type { AnimalFacts } from '../../shared-types/animal.ts'
import type { StationSettings } from '../../shared-types/station.ts'

export const settings: StationSettings = {
  units: [
    { code: '12', name: 'Juniper Bench', mandatory: true },
    { code: '14', name: 'Cinder Flats', mandatory: false },
  ],
  species: [
    { species: 'mule-deer', ages: ['yearling', 'adult'] },
    { species: 'elk', ages: ['yearling', 'adult'] },
  ],
  tissues: [
    { site: 'left', kept: 'fresh' },
    { site: 'right', kept: 'fresh' },
  ],
  locationNeed: 'unit-and-place',
  holdHours: 48,
  limits: {
    chilled: { low: 0, high: 6 },
    frozen: { low: -50, high: -15 },
    room: { low: 5, high: 30 },
  },
  laboratory: 'Basin Animal Disease Laboratory',
  askForResult: 'Ask by animal number from three weeks after the hunt at the station office.',
  targetWaitMinutes: 30,
}

let serial = 0

export function factsOf(changed: Partial<AnimalFacts> = {}): AnimalFacts {
  serial += 1
  return {
    hunter: `H${1000 + serial}`,
    tag: `T${20000 + serial}`,
    species: 'mule-deer',
    sex: 'male',
    age: 'adult',
    harvested: '2026-11-14' as AnimalFacts['harvested'],
    place: { by: 'unit', unit: '12', place: 'head of Dry Fork' },
    head: { presented: 'carcass', faults: [] },
    consent: 'given',
    programme: 'mandatory',
    ...changed,
  }
}
