/** A signed manifest of any size, made by the rule that makes them at a handoff. */
import { digestOf } from '../../electron/desk/manifest-check.ts'
import { manifestOf } from '../../electron/station/manifest.ts'
import type { ManifestFile } from '../../shared-types/manifest.ts'
import { bagNumber, handoffNumber } from '../../shared-types/sample-number.ts'
import { bag, cooler, desk, lead, minutes, morning } from '../station/records.ts'
import { settings } from './station.ts'

/** Two coolers with half of the bags each. */
export function courierManifest(bags = 6): ManifestFile {
  const coolers = [1, 2].map((serial) =>
    cooler(serial, { state: 'sealed', seal: `K-1044${serial}` }),
  )
  const half = Math.ceil(bags / 2)
  const inside = (place: number) =>
    Array.from({ length: place === 0 ? half : bags - half }, (_, each) => {
      const serial = place * Math.ceil(half / 2) + Math.floor(each / 2) + 1
      const isLeft = each % 2 === 0
      return {
        ...bag(serial, { sealedMs: morning + minutes(serial) }),
        bag: bagNumber(desk, serial, isLeft ? 'L' : 'R'),
        site: isLeft ? ('left' as const) : ('right' as const),
        species: 'elk' as const,
        check: 'lymph-node' as const,
        harvest: { by: 'unit' as const, unit: '31', place: 'Ash Creek road' },
        excursion: false,
      }
    })
  const manifest = manifestOf({
    station: {
      desk,
      name: 'Cinder Gap',
      zone: 'America/Denver',
      practice: false,
      office: false,
      settings,
    },
    handoff: {
      handoff: handoffNumber(desk, 1),
      destination: 'Basin Animal Disease Laboratory',
      state: 'loading',
      supplements: null,
      classed: null,
      packed: null,
      begunMs: morning,
      signed: null,
      coolers: coolers.map(({ cooler: number, seal }, place) => ({
        cooler: number,
        scanned: {
          seal: seal ?? '',
          celsius: 3.5,
          counted: inside(place).length,
          expected: inside(place).length,
          words: '',
          ms: morning,
        },
      })),
    },
    lead,
    courier: { name: 'Tam Ridley', organisation: 'Basin Couriers', vehicle: 'van 7' },
    handedOverMs: morning + minutes(600),
    coolers: coolers.map((each, place) => ({ ...each, inside: inside(place) })),
  })
  return { digest: digestOf(manifest), manifest }
}
