import type { Folds } from './fold.ts'

/** What was taken back stands in the entries beside it; the tables follow those. */
export const slipFolds = { 'slip.taken-back': () => [] } satisfies Partial<Folds>
