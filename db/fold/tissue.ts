import type { Folds } from './fold.ts'
import { patch, put } from './row-write.ts'

/** Tissue on the bench and the bags it goes into. */
export const tissueFolds = {
  'tissue.checked': ({ hash, at, by, body }) => [
    put('tissue', {
      animal: body.animal,
      site: body.site,
      seen: body.check,
      size_mm: body.sizeMm,
      missed_words: '',
    }),
    put('look', {
      hash,
      animal: body.animal,
      site: body.site,
      seen: body.check,
      sampler: by,
      ms: at.wall,
    }),
  ],
  'tissue.missed': ({ body }) => [
    put('tissue', {
      animal: body.animal,
      site: body.site,
      missed: body.reason,
      missed_words: body.words,
    }),
  ],
  'tissue.reopened': ({ body }) => [
    patch(
      'tissue',
      { animal: body.animal, site: body.site },
      { seen: null, size_mm: null, missed: null, missed_words: '' },
    ),
  ],
  'bag.sealed': ({ at, body }) => [
    put('bag', {
      bag: body.bag,
      animal: body.animal,
      kit: body.kit,
      site: body.site,
      kept: body.kept,
      sealed_ms: at.wall,
      place: 'bench',
    }),
    patch('tissue', { animal: body.animal, site: body.site }, { bag: body.bag }),
  ],
  'bag.discarded': ({ body }) => [
    patch('bag', { bag: body.bag }, { place: 'discarded', cooler: null }),
    patch('tissue', { bag: body.bag }, { bag: null, seen: null, size_mm: null }),
  ],
  'bag.placed': ({ body }) => [
    patch('bag', { bag: body.bag }, { place: 'cooler', cooler: body.cooler }),
  ],
  'bag.taken-out': ({ body }) => [
    patch('bag', { bag: body.bag }, { place: 'bench', cooler: null }),
  ],
} satisfies Partial<Folds>
