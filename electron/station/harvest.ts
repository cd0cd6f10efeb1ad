/** Where an animal was taken, as a document for the laboratory says it. */
import type { HarvestPlace } from '../../shared-types/animal.ts'

/** `unit 31, Ash Creek road`; coordinates in degrees (WGS 84); empty where nobody knows. */
export function harvestWords(place: HarvestPlace): string {
  if (place.by === 'not-known') return ''
  const unit = place.unit === '' ? '' : `unit ${place.unit}`
  const where =
    place.by === 'unit'
      ? place.place
      : `${place.latitude.toFixed(4)}, ${place.longitude.toFixed(4)}`
  return [unit, where].filter(Boolean).join(', ')
}
