import type { Ruling } from '../../shared-types/ruling.ts'
import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import { factColumns } from './animals.ts'
import type { Folds } from './fold.ts'
import { patch, put, type RowWrite } from './row-write.ts'

/** How offices settled what the merged record could not. */
export const discrepancyFolds = {
  'discrepancy.settled': ({ hash, desk, by, at, body: { ruling, ...settled } }) => [
    put('settlement', {
      ...settled,
      hash,
      replaces: JSON.stringify(settled.replaces),
      desk,
      by,
      ms: at.wall,
    }),
    ...(ruling === null ? [] : rulingWrites(ruling)),
  ],
} satisfies Partial<Folds>

/** The record follows a ruling from then on, and whatever is recorded later goes beyond it. */
function rulingWrites(ruling: Ruling): RowWrite[] {
  switch (ruling.is) {
    case 'one-animal':
      return [counted(ruling.kept), ...ruling.same.map((animal) => counted(animal, ruling.kept))]
    case 'separate-animals':
      return ruling.animals.map((animal) => counted(animal))
    case 'bag-of':
      return bagOfWrites(ruling)
    case 'bag-in':
      return [patch('bag', { bag: ruling.bag }, { cooler: ruling.cooler })]
    case 'bag-with':
      return [patch('bag', { bag: ruling.bag }, { place: 'handed-off', handoff: ruling.handoff })]
    case 'kit-of': {
      const { kit, animal, sampler } = ruling
      return [patch('kit', { kit }, { animal, sampler })]
    }
    case 'facts':
      return [
        patch('animal', { animal: ruling.animal }, factColumns(ruling.facts, ruling.noSample)),
      ]
    case 'outcome':
      return [patch('animal', { animal: ruling.animal }, { outcome: ruling.outcome })]
  }
}

/** An animal by itself, or one that is another's record once more. */
function counted(animal: AnimalNumber, as: AnimalNumber | null = null): RowWrite {
  return patch('animal', { animal }, { duplicate_of: as })
}

function bagOfWrites({ bag, animal, kit, site }: Extract<Ruling, { is: 'bag-of' }>): RowWrite[] {
  return [
    patch('bag', { bag }, { animal, kit, site }),
    patch('tissue', { bag }, { bag: null }),
    patch('tissue', { animal, site }, { bag }),
    patch('sample_result', { bag }, { animal, site }),
  ]
}
