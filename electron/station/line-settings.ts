/** What a station that has not settled its line begins with. */
import type { LineSettings } from '../../shared-types/line.ts'
import type { StationSettings } from '../../shared-types/station.ts'

/**
 * Minutes an animal: published figures run from one to ten with the paperwork (wgfd.wyo.gov, "CWD
 * Testing": 5 to 10 minutes); elk, damaged heads and the two peaks of an opening day are common
 * practice, no source. 164 animals a station and day: Missouri, opening weekend 2018 (ksdk.com,
 * gisblue.mdc.mo.gov: over 20,000 samples, 61 stations, two days).
 */
export const usualLineSettings: LineSettings = {
  mandatoryFirst: true,
  overtakenAtMost: 5,
  spoilingHours: 36,
  usualMinutes: { deer: 6, elkOrMoose: 9, between: 1 },
  damagedHeadTimes: 1.3,
  opens: '07:00',
  closes: '20:00',
  profile: [
    { from: '07:00', weight: 1 },
    { from: '08:00', weight: 4 },
    { from: '09:00', weight: 7 },
    { from: '10:00', weight: 6 },
    { from: '11:00', weight: 4 },
    { from: '12:00', weight: 3 },
    { from: '13:00', weight: 2 },
    { from: '14:00', weight: 3 },
    { from: '15:00', weight: 4 },
    { from: '16:00', weight: 7 },
    { from: '17:00', weight: 12 },
    { from: '18:00', weight: 12 },
    { from: '19:00', weight: 6 },
  ],
  expectedAnimals: 164,
  expectedSpread: 0.6,
  breakMinutes: 30,
  samplersAtTable: 2,
}

/** The line of a station: what its lead settled, or what most begin with. */
export function lineSettingsOf(settings: Pick<StationSettings, 'line'>): LineSettings {
  return settings.line ?? usualLineSettings
}
