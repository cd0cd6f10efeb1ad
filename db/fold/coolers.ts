import type { Folds } from './fold.ts'
import { patch, put } from './row-write.ts'

/** Coolers, their seals and their temperatures. */
export const coolerFolds = {
  'cooler.opened': ({ body }) => [
    put('cooler', {
      cooler: body.cooler,
      name: body.name,
      keeping: body.keeping,
      capacity: body.capacity,
      state: 'open',
    }),
  ],
  'cooler.read': ({ hash, at, by, body }) => [
    put('reading', {
      hash,
      cooler: body.cooler,
      celsius: body.celsius,
      excursion: body.excursion ? 1 : 0,
      ms: at.wall,
      by,
      source: '',
    }),
  ],
  'cooler.logger-read': ({ hash, by, body }) =>
    body.readings.map(({ ms, celsius, excursion }, place) =>
      put('reading', {
        hash: `${hash}/${place}`,
        cooler: body.cooler,
        celsius,
        excursion: excursion ? 1 : 0,
        ms,
        by,
        source: body.file,
      }),
    ),
  'cooler.sealed': ({ body }) => [
    patch('cooler', { cooler: body.cooler }, { state: 'sealed', seal: body.seal }),
  ],
  'seal.broken': ({ body }) => [
    patch('cooler', { cooler: body.cooler }, { state: 'open', seal: null }),
  ],
} satisfies Partial<Folds>
