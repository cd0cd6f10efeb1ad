/** The invented station of a practice day. No such place, laboratory or unit exists. */
import type { HarvestUnit, StationSettings } from '../../../shared-types/station.ts'

export const practiceStation = { code: 'QFT', name: 'Quernfield Turnout' } as const

/** Large labels of an office printer: quick to print, and easy to read for a learner. */
export const practiceStock = 'sheet-letter'

/** Everyone's PIN in a practice day; it is told to whoever opens one. */
export const practicePin = '2468'

/** Added by the lead during the day, when a hunter comes from there. */
export const laterUnit: HarvestUnit = { code: 'N9', name: 'Nettlefen Bottom', mandatory: false }

export const practiceSettings: StationSettings = {
  units: [
    { code: 'P1', name: 'Pellamy Ridge', mandatory: true },
    { code: 'P2', name: 'Quernfield Flats', mandatory: true },
    { code: 'P4', name: 'Dunmarrow Creek', mandatory: false },
    { code: 'P7', name: 'Upper Vannet', mandatory: false },
  ],
  species: [
    { species: 'white-tailed-deer', ages: ['yearling', 'adult'] },
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
    chilled: { low: 0, high: 8 },
    frozen: { low: -40, high: -10 },
    room: { low: 5, high: 30 },
  },
  laboratory: 'Vannet Valley Animal Laboratory (invented)',
  askForResult: 'In about three weeks, at this station, with the number above.',
  targetWaitMinutes: 30,
}
