/**
 * Invented outlines of the practice units, as an office would supply them: GeoJSON (RFC 7946) in open
 * ocean, where nobody hunts and nobody lives.
 */
const corners: Readonly<Record<string, readonly (readonly [number, number])[]>> = {
  P1: [
    [-140.62, 45.42],
    [-140.44, 45.4],
    [-140.4, 45.52],
    [-140.46, 45.62],
    [-140.6, 45.6],
    [-140.66, 45.5],
  ],
  P2: [
    [-140.44, 45.4],
    [-140.24, 45.38],
    [-140.2, 45.46],
    [-140.28, 45.54],
    [-140.4, 45.52],
  ],
  P4: [
    [-140.64, 45.2],
    [-140.42, 45.18],
    [-140.38, 45.28],
    [-140.44, 45.4],
    [-140.62, 45.42],
    [-140.7, 45.3],
  ],
  P7: [
    [-140.42, 45.18],
    [-140.16, 45.2],
    [-140.18, 45.32],
    [-140.24, 45.38],
    [-140.44, 45.4],
    [-140.38, 45.28],
  ],
  N9: [
    [-140.46, 45.62],
    [-140.4, 45.52],
    [-140.28, 45.54],
    [-140.24, 45.64],
    [-140.36, 45.7],
  ],
}

export const practiceOutlines = JSON.stringify({
  type: 'FeatureCollection',
  features: Object.entries(corners).map(([code, ring]) => ({
    type: 'Feature',
    properties: { code },
    geometry: { type: 'Polygon', coordinates: [[...ring, ring[0]]] },
  })),
})

/** Invented numbers of herds, with the headings that the coverage screen reads. */
export const practiceHerds = [
  'unit,species,population,harvested,goal',
  'P1,mule deer,420,96,',
  'P1,white-tailed deer,310,70,',
  'P2,mule deer,380,,',
  'P2,white-tailed deer,,,40',
  'P4,mule deer,150,44,',
  'P7,elk,90,21,12',
  '',
].join('\n')
