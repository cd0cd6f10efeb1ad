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
      log_ms: at.ms,
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
        log_ms: ms,
        by,
        source: body.file,
      }),
    ),
  // Custody is told from the entries themselves.
  'cooler.kept': () => [],
  'cooler.sealed': ({ at, body: { cooler, seal } }) => [
    patch('cooler', { cooler }, { state: 'sealed', seal }),
    put('seal', { seal, cooler, sealed_ms: at.wall }),
  ],
  'seal.broken': ({ at, body: { cooler, seal } }) => [
    patch('cooler', { cooler }, { state: 'open', seal: null }),
    patch('seal', { seal, cooler }, { broken_ms: at.wall }),
  ],
} satisfies Partial<Folds>
