import type { AnimalFacts, NoSampleReason } from '../../shared-types/animal.ts'
import type { Folds } from './fold.ts'
import { patch, put, remove } from './row-write.ts'

/** The columns that hold what is known of an animal. */
export function factColumns(facts: AnimalFacts, noSample: NoSampleReason | null) {
  const { place, head, harvestedAt, ...plain } = facts
  return {
    ...plain,
    harvested_at: harvestedAt ?? null,
    place: JSON.stringify(place),
    unit: (place.by === 'not-known' ? '' : place.unit) || null,
    head: JSON.stringify(head),
    no_sample: noSample,
  }
}

/** Animals from check-in to outcome. */
export const animalFolds = {
  'animal.checked-in': ({ desk, at, body }) => [
    put('animal', {
      animal: body.animal,
      desk,
      day: body.day,
      ...factColumns(body.facts, body.noSample),
      contact: body.contact,
      state: body.noSample === null ? 'waiting' : 'recorded',
      arrived_ms: at.wall,
    }),
  ],
  'animal.amended': ({ body }) => [
    patch('animal', { animal: body.animal }, factColumns(body.facts, body.noSample)),
    // Only an animal nobody has begun on joins or leaves the line by an amendment.
    patch(
      'animal',
      { animal: body.animal, state: body.noSample === null ? 'recorded' : 'waiting' },
      { state: body.noSample === null ? 'waiting' : 'recorded' },
    ),
  ],
  'animal.assigned': ({ at, body }) => [
    patch(
      'animal',
      { animal: body.animal },
      { state: 'with-sampler', sampler: body.sampler, assigned_ms: at.wall },
    ),
    // A wait is over when a sampler first takes the animal, whatever happens after.
    patch('told', { animal: body.animal, taken_ms: null }, { taken_ms: at.wall }),
  ],
  'animal.put-back': ({ body }) => [
    patch(
      'animal',
      { animal: body.animal },
      { state: 'waiting', sampler: null, assigned_ms: null },
    ),
  ],
  'animal.left': ({ body }) => [patch('animal', { animal: body.animal }, { state: 'left' })],
  'animal.struck-out': ({ body }) => [
    patch('animal', { animal: body.animal }, { state: 'struck-out' }),
    remove('told', { animal: body.animal }),
  ],
  'animal.finished': ({ at, body }) => [
    patch(
      'animal',
      { animal: body.animal },
      {
        state: 'finished',
        sampler: body.sampler,
        outcome: body.outcome,
        finished_ms: at.wall,
      },
    ),
  ],
  'animal.outcome-changed': ({ body }) => [
    patch('animal', { animal: body.animal }, { outcome: body.outcome }),
  ],
} satisfies Partial<Folds>
