/**
 * Outlines of units out of a GeoJSON text (RFC 7946). Only polygons are outlines; anything else is named
 * and left out. Rings are taken whichever way round they run, as section 3.1.6 asks of a reader; a ring
 * that is not closed is closed.
 */
import {
  mostCorners,
  mostCornersOfUnit,
  type Position,
  type Ring,
  type UnitOutlined,
} from '../../../shared-types/coverage.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'

type Polygons = UnitOutlined['polygons']
type Properties = Readonly<Record<string, unknown>>

/** A feature with what can be drawn of it. */
export interface Feature {
  readonly properties: Properties
  readonly polygons: Polygons
}

export interface OutlineFile {
  readonly features: readonly Feature[]
  /** What was left out or mended, a sentence each. */
  readonly problems: readonly string[]
}

/** Reads the text; refuses what is no GeoJSON, and what has no outline in it at all. */
export function readOutlines(text: string): Result<OutlineFile> {
  const parsed = parseJson(text)
  if (parsed === undefined)
    return refused(
      'outlines-torn',
      'The file is torn or is no JSON: it ends or breaks in the middle.',
      'Export the outlines as GeoJSON once more and read that file.',
      'text',
    )
  const found = featuresIn(parsed)
  if (found === null)
    return refused(
      'not-geojson',
      'The file is JSON, but has no GeoJSON features in it.',
      'Export a FeatureCollection of the units, one polygon or multipolygon each.',
      'text',
    )
  const problems: string[] = []
  const features = found.flatMap((feature, at) => readFeature(feature, at + 1, problems))
  if (features.length > 0) return granted({ features, problems: problems.slice(0, mostProblems) })
  return refused(
    'no-outlines',
    `No outline can be drawn from this file. ${problems[0] ?? 'It has no features.'}`,
    'Export polygons in degrees of longitude and latitude (WGS 84), as RFC 7946 says.',
    'text',
  )
}

const mostProblems = 50

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''))
  } catch {
    return undefined
  }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** The features of a collection, or the one the file consists of. */
function featuresIn(json: unknown): unknown[] | null {
  if (!isObject(json)) return null
  if (json.type === 'FeatureCollection' && Array.isArray(json.features)) return json.features
  return json.type === 'Feature' ? [json] : null
}

function readFeature(feature: unknown, place: number, problems: string[]): Feature[] {
  const tell = (problem: string) => problems.push(`Feature ${place}: ${problem}`)
  if (!isObject(feature) || feature.type !== 'Feature') {
    tell('not a feature.')
    return []
  }
  const polygons = polygonsIn(feature.geometry, tell)
  const properties = isObject(feature.properties) ? feature.properties : {}
  return polygons.length === 0 ? [] : [{ properties, polygons }]
}

type Tell = (problem: string) => void

function polygonsIn(geometry: unknown, tell: Tell): Polygons {
  if (!isObject(geometry)) {
    tell('it has no geometry.')
    return []
  }
  if (geometry.type === 'Polygon') return readPolygons([geometry.coordinates], tell)
  if (geometry.type === 'MultiPolygon') return readPolygons(geometry.coordinates, tell)
  if (geometry.type === 'GeometryCollection' && Array.isArray(geometry.geometries))
    return geometry.geometries.flatMap((each) => polygonsIn(each, tell))
  tell(`a ${String(geometry.type)} is no outline.`)
  return []
}

function readPolygons(coordinates: unknown, tell: Tell): Polygons {
  if (!Array.isArray(coordinates)) {
    tell('its coordinates are torn.')
    return []
  }
  return coordinates.flatMap((polygon) => {
    const rings = Array.isArray(polygon) ? polygon.map((ring) => readRing(ring, tell)) : []
    const [outer, ...holes] = rings
    if (!outer) return []
    return [[outer, ...holes.filter((hole) => hole !== null)]]
  })
}

/** The ring, closed and thinned; null, and told, where it cannot be drawn. */
function readRing(ring: unknown, tell: Tell): Ring | null {
  if (!Array.isArray(ring)) {
    tell('a ring is torn.')
    return null
  }
  const positions = ring.map(readPosition)
  if (positions.includes(null)) {
    tell('a position is not in degrees of longitude and latitude (WGS 84).')
    return null
  }
  const closed = close(
    positions.filter((each) => each !== null),
    tell,
  )
  if (closed.length >= 4) return thinned(closed)
  tell('a ring has fewer than three corners.')
  return null
}

function readPosition(position: unknown): Position | null {
  const [longitude, latitude] = Array.isArray(position) ? position : []
  const isDegrees = (value: unknown, most: number): value is number =>
    typeof value === 'number' && Math.abs(value) <= most
  return isDegrees(longitude, 180) && isDegrees(latitude, 90) ? [longitude, latitude] : null
}

function close(ring: readonly Position[], tell: Tell): Position[] {
  const [first] = ring
  const last = ring.at(-1)
  if (!first || !last || (first[0] === last[0] && first[1] === last[1])) return [...ring]
  tell('a ring was not closed; it was closed.')
  return [...ring, first]
}

/** Metres are not drawn: five decimals are about one metre, and this many corners fill a screen. */
function thinned(ring: readonly Position[]): Ring {
  let [tolerance, kept] = [0, ring.map(rounded)]
  while (kept.length > mostCorners) {
    tolerance = tolerance === 0 ? 0.0001 : tolerance * 2
    kept = simplified(ring.map(rounded), tolerance)
  }
  return kept.length >= 4 ? kept : ring.slice(0, mostCorners).map(rounded)
}

function rounded([longitude, latitude]: Position): Position {
  return [Number(longitude.toFixed(5)), Number(latitude.toFixed(5))]
}

/**
 * The corners that matter at a tolerance in degrees. A ring ends where it begins, so it is cut at the
 * corner farthest from there first. Source: Douglas & Peucker, Cartographica 10:112-122, 1973.
 */
function simplified(ring: readonly Position[], tolerance: number): Position[] {
  const [first] = ring
  if (!first) return []
  const far = farthest(ring, 0, ring.length - 1)
  const keep = new Set([0, far.at, ring.length - 1])
  const open: [number, number][] = [
    [0, far.at],
    [far.at, ring.length - 1],
  ]
  for (let span = open.pop(); span; span = open.pop()) {
    const { at, distance } = farthest(ring, span[0], span[1])
    if (distance <= tolerance) continue
    keep.add(at)
    open.push([span[0], at], [at, span[1]])
  }
  return ring.filter((_, at) => keep.has(at))
}

/** The position between two others that lies farthest from the line through them. */
function farthest(ring: readonly Position[], from: number, to: number) {
  const [a, b] = [ring[from], ring[to]]
  let far = { at: from, distance: 0 }
  if (!a || !b) return far
  for (let at = from + 1; at < to; at += 1) {
    const corner = ring[at]
    const distance = corner ? distanceToLine(corner, a, b) : 0
    if (distance > far.distance) far = { at, distance }
  }
  return far
}

function distanceToLine([x, y]: Position, [ax, ay]: Position, [bx, by]: Position): number {
  const length = Math.hypot(bx - ax, by - ay)
  if (length === 0) return Math.hypot(x - ax, y - ay)
  return Math.abs((bx - ax) * (ay - y) - (ax - x) * (by - ay)) / length
}

export interface PropertyFit {
  readonly name: string
  /** Features whose value is the code of a known unit. */
  readonly fits: number
  readonly examples: string[]
}

/** The properties of the features, those first whose values are codes of known units. */
export function propertyFits({ features }: OutlineFile, codes: ReadonlySet<string>): PropertyFit[] {
  const names = [...new Set(features.flatMap(({ properties }) => Object.keys(properties)))]
  return names
    .slice(0, 60)
    .map((name) => {
      const values = features.flatMap(({ properties }) => codeIn(properties[name]) ?? [])
      return {
        name,
        fits: values.filter((value) => codes.has(value)).length,
        examples: [...new Set(values)].slice(0, 4),
      }
    })
    .toSorted((a, b) => b.fits - a.fits)
}

/** A unit's code as files write it: a text, or a number. */
function codeIn(value: unknown): string | null {
  const text =
    typeof value === 'number' ? String(value) : typeof value === 'string' ? value.trim() : ''
  return text.length > 0 && text.length <= 12 ? text : null
}

/** An outline for each unit named by a property; the parts of a unit that comes twice are put together. */
export function outlinesBy(
  { features }: OutlineFile,
  property: string,
  file: string,
): UnitOutlined[] {
  const units = new Map<string, Polygons>()
  for (const { properties, polygons } of features) {
    const unit = codeIn(properties[property])
    if (unit !== null) units.set(unit, [...(units.get(unit) ?? []), ...polygons])
  }
  return [...units].map(([unit, polygons]) => ({ unit, polygons: largest(polygons), file }))
}

/** The polygons with most corners first, as many as are kept of a unit; the first one always. */
function largest(polygons: Polygons): Polygons {
  const cornersOf = (rings: Polygons[number]) => rings.reduce((sum, ring) => sum + ring.length, 0)
  let corners = 0
  return polygons
    .map((rings) => rings.slice(0, 9))
    .toSorted((a, b) => cornersOf(b) - cornersOf(a))
    .filter((rings, at) => (corners += cornersOf(rings)) <= mostCornersOfUnit || at === 0)
    .slice(0, 50)
}
