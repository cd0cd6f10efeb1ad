/** The manifest of a full load: a thousand bags as PDF with its data inside, as JSON and as CSV. */
import { manifestFiles } from '../../electron/desk/manifest-files.ts'
import { courierManifest } from '../support/manifest.ts'
import { settings } from '../support/station.ts'
import { alone, type Figure, ms } from './measure.ts'

const bags = 1000

export async function manifestFigures(): Promise<Figure[]> {
  const { manifest, digest } = courierManifest(bags)
  const signed = {
    ms: Date.parse(manifest.handedOverAt),
    manifest,
    digest,
    leadSignature: { how: 'on-paper' as const },
    courierSignature: { how: 'on-paper' as const },
  }
  const station = {
    desk: manifest.desk,
    name: manifest.station,
    zone: manifest.zone,
    practice: false,
    office: false,
    settings,
  }
  const make = () => manifestFiles(signed, station, signed.ms)
  await make()
  const { p50, p95 } = await alone(10, make)
  return [
    {
      what: `the manifest of ${bags.toLocaleString('en')} bags as PDF, JSON and CSV (p95)`,
      figure: `${ms(p95)} (p50 ${ms(p50)})`,
      target: 'under 1,000 ms',
      met: p95 < 1000,
    },
  ]
}
