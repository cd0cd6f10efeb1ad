/**
 * Where the corners of units lie in a picture. Pure: the drawing only draws.
 *
 * Equirectangular projection: a degree of longitude is drawn shorter by the cosine of the middle
 * latitude, so that shapes there are true; over a few degrees nobody sees more. Outlines across the
 * 180th meridian come out torn apart.
 */
import type { z } from 'zod'
import type { OutlineView } from '../../shared-types/views/coverage.ts'

type Outline = z.infer<typeof OutlineView>

export interface PlacedUnit {
  readonly unit: string
  /** An SVG path; holes stay holes by the even-odd rule, whichever way rings run. */
  readonly path: string
  /** Where the unit's name stands: the middle of its largest polygon's box. */
  readonly label: { readonly x: number; readonly y: number }
}

export interface MapPlan {
  readonly width: number
  readonly height: number
  readonly units: readonly PlacedUnit[]
}

interface Box {
  readonly west: number
  readonly east: number
  readonly south: number
  readonly north: number
}

const margin = 12

/** Fits all outlines into a width and at most a height; null without outlines. */
export function planMap(
  outlines: readonly Outline[],
  width: number,
  mostHeight: number,
): MapPlan | null {
  if (outlines.length === 0) return null
  const all = boxOf(outlines.flatMap(({ polygons }) => polygons.flat(2)))
  const squeeze = Math.max(0.01, Math.cos(((all.south + all.north) / 2) * (Math.PI / 180)))
  const [wide, high] = [
    Math.max(1e-6, (all.east - all.west) * squeeze),
    Math.max(1e-6, all.north - all.south),
  ]
  const scale = Math.min((width - 2 * margin) / wide, (mostHeight - 2 * margin) / high)
  const left = (width - wide * scale) / 2
  const x = (longitude: number) => left + (longitude - all.west) * squeeze * scale
  const y = (latitude: number) => margin + (all.north - latitude) * scale
  return {
    width,
    height: high * scale + 2 * margin,
    units: outlines.map(({ unit, polygons }) => ({
      unit,
      path: polygons
        .flat()
        .map(
          (ring) =>
            `M${ring.map(([lon, lat]) => `${x(lon).toFixed(1)},${y(lat).toFixed(1)}`).join('L')}Z`,
        )
        .join(''),
      label: labelOf(polygons, x, y),
    })),
  }
}

function boxOf(positions: readonly (readonly [number, number])[]): Box {
  let [west, east, south, north] = [180, -180, 90, -90]
  for (const [longitude, latitude] of positions) {
    west = Math.min(west, longitude)
    east = Math.max(east, longitude)
    south = Math.min(south, latitude)
    north = Math.max(north, latitude)
  }
  return { west, east, south, north }
}

type Scale = (degrees: number) => number

function labelOf(polygons: Outline['polygons'], x: Scale, y: Scale): PlacedUnit['label'] {
  const boxes = polygons.map(([outer]) => boxOf(outer ?? []))
  const areaOf = ({ west, east, south, north }: Box) => (east - west) * (north - south)
  const [largest] = boxes.toSorted((a, b) => areaOf(b) - areaOf(a))
  if (!largest) return { x: 0, y: 0 }
  return { x: x((largest.west + largest.east) / 2), y: y((largest.south + largest.north) / 2) }
}
