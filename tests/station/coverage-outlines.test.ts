/** Outlines out of GeoJSON as offices send it: good, torn, turned, and of other shapes. RFC 7946. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { outlinesBy, propertyFits, readOutlines } from '../../electron/station/coverage/outlines.ts'
import { mostCorners, mostCornersOfUnit, UnitOutlined } from '../../shared-types/coverage.ts'

type Corner = readonly [number, number]
// Open ocean: a square where nobody hunts.
const square: Corner[] = [
  [-140, 45],
  [-139, 45],
  [-139, 46],
  [-140, 46],
  [-140, 45],
]
const hole: Corner[] = [
  [-139.8, 45.2],
  [-139.8, 45.4],
  [-139.6, 45.4],
  [-139.8, 45.2],
]

const feature = (geometry: unknown, properties: unknown = { code: 'P1' }) => ({
  type: 'Feature',
  properties,
  geometry,
})
const polygon = (...rings: unknown[]) => ({ type: 'Polygon', coordinates: rings })
const collection = (...features: unknown[]) =>
  JSON.stringify({ type: 'FeatureCollection', features })

function read(text: string) {
  const answer = readOutlines(text)
  if (!answer.ok) throw new Error(answer.refusal.code)
  return answer.value
}
function code(text: string): string {
  const answer = readOutlines(text)
  return answer.ok ? 'granted' : answer.refusal.code
}

describe('what an office may send', () => {
  test('polygons, multipolygons and collections of them, each an outline of its unit', () => {
    const file = read(
      collection(
        feature(polygon(square, hole)),
        feature({ type: 'MultiPolygon', coordinates: [[square], [square]] }, { code: 'P2' }),
        feature({ type: 'GeometryCollection', geometries: [polygon(square)] }, { code: 4 }),
      ),
    )
    expect(file.problems).toEqual([])
    const outlines = outlinesBy(file, 'code', 'units.geojson')
    expect(outlines.map(({ unit, polygons }) => [unit, polygons.length])).toEqual([
      ['P1', 1],
      ['P2', 2],
      ['4', 1],
    ])
    expect(outlines[0]?.polygons[0]).toHaveLength(2)
    for (const outline of outlines) expect(UnitOutlined.safeParse(outline).success).toBe(true)
  })

  test('rings the wrong way round are taken: a reader should not reject them (section 3.1.6)', () => {
    const { features, problems } = read(
      collection(feature(polygon(square.toReversed(), hole.toReversed()))),
    )
    expect(problems).toEqual([])
    expect(features[0]?.polygons[0]?.[0]?.[1]).toEqual([-140, 46])
  })

  test('a ring that is not closed is closed, and it is said', () => {
    const { features, problems } = read(collection(feature(polygon(square.slice(0, -1)))))
    expect(features[0]?.polygons[0]?.[0]?.at(-1)).toEqual([-140, 45])
    expect(problems).toEqual(['Feature 1: a ring was not closed; it was closed.'])
  })

  test('a height beside longitude and latitude is left out', () => {
    const high = square.map((corner) => [...corner, 812.5])
    expect(read(collection(feature(polygon(high)))).features[0]?.polygons[0]?.[0]?.[0]).toEqual([
      -140, 45,
    ])
  })

  test('a unit in several features is put together', () => {
    const file = read(collection(feature(polygon(square)), feature(polygon(square))))
    expect(outlinesBy(file, 'code', 'a')[0]?.polygons).toHaveLength(2)
  })
})

describe('what cannot be drawn', () => {
  test.each([
    [
      'a file cut off in the middle',
      collection(feature(polygon(square))).slice(0, 90),
      'outlines-torn',
    ],
    ['an empty file', '', 'outlines-torn'],
    ['JSON of another kind', '{"rows":[1,2]}', 'not-geojson'],
    ['a bare geometry', JSON.stringify(polygon(square)), 'not-geojson'],
    [
      'points and lines only',
      collection(feature({ type: 'Point', coordinates: [-140, 45] })),
      'no-outlines',
    ],
    [
      'metres of a projection',
      collection(
        feature(
          polygon([
            [500000, 4980000],
            [501000, 4980000],
            [501000, 4981000],
            [500000, 4980000],
          ]),
        ),
      ),
      'no-outlines',
    ],
    [
      'a ring of two corners',
      collection(feature(polygon([square[0], square[1], square[0]]))),
      'no-outlines',
    ],
    [
      'coordinates that are no numbers',
      collection(feature(polygon([['w', 'n'], [1], null, 3]))),
      'no-outlines',
    ],
    ['a feature without a geometry', collection(feature(null)), 'no-outlines'],
  ])('%s', (_, text, expected) => {
    expect(code(text)).toBe(expected)
  })

  test('beside good outlines, other shapes are named and left out', () => {
    const { features, problems } = read(
      collection(
        feature({ type: 'LineString', coordinates: square }),
        feature(polygon(square)),
        'nonsense',
      ),
    )
    expect(features).toHaveLength(1)
    expect(problems).toEqual([
      'Feature 1: a LineString is no outline.',
      'Feature 3: not a feature.',
    ])
  })

  test('whatever stands in the file, it is read or refused, and never throws', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        readOutlines(text)
        readOutlines(`{"type":"FeatureCollection","features":[${text}]}`)
        readOutlines(collection(feature(polygon(JSON.parse(text)))))
      }),
    )
  })
})

test('a coast of ten thousand corners is thinned to what a picture shows, and stays within a hair of it', () => {
  const coast = Array.from({ length: 10_000 }, (_, at): Corner => {
    const turn = (at / 10_000) * 2 * Math.PI
    const far = 1 + 0.05 * Math.sin(turn * 40)
    return [-140 + far * Math.cos(turn), 45 + far * Math.sin(turn)]
  })
  const ring = read(collection(feature(polygon([...coast, coast[0]])))).features[0]
    ?.polygons[0]?.[0]
  expect(ring?.length).toBeLessThanOrEqual(mostCorners)
  expect(ring?.length).toBeGreaterThan(100)
  expect(ring?.[0]).toEqual(ring?.at(-1))
})

test('of a unit of many islands the large ones are kept, so that its entry stays small', () => {
  const island = (at: number, corners: number): Corner[] =>
    Array.from({ length: corners + 1 }, (_, corner): Corner => {
      const turn = ((corner % corners) / corners) * 2 * Math.PI
      return [-140 + at / 10 + 0.04 * Math.cos(turn), 45 + 0.04 * Math.sin(turn)]
    })
  const islands = Array.from({ length: 200 }, (_, at) => [island(at, at < 5 ? 300 : 40)])
  const file = read(collection(feature({ type: 'MultiPolygon', coordinates: islands })))
  const [outline] = outlinesBy(file, 'code', 'coast.geojson')
  const corners = (outline?.polygons ?? []).flat(2).length
  expect(corners).toBeLessThanOrEqual(mostCornersOfUnit)
  expect(outline?.polygons.slice(0, 5).every(([ring]) => (ring?.length ?? 0) > 100)).toBe(true)
  expect(UnitOutlined.safeParse(outline).success).toBe(true)
})

test('the property whose values are unit codes comes first', () => {
  const file = read(
    collection(
      feature(polygon(square), { area: 12.5, name: 'Pellamy Ridge', code: 'P1' }),
      feature(polygon(square), { area: 7, name: 'Dunmarrow Creek', code: 'P4' }),
    ),
  )
  const [first] = propertyFits(file, new Set(['P1', 'P2', 'P4']))
  expect(first).toEqual({ name: 'code', fits: 2, examples: ['P1', 'P4'] })
})
