import { refused } from '../../shared-types/result.ts'
import type { ShelfHandlers } from './call.ts'

export const practiceCalls = {
  'practice.open': () =>
    refused('not-yet', 'The practice day is being built.', 'Set up a station instead.'),
} satisfies Partial<ShelfHandlers>
