import type { Folds } from './fold.ts'

/** Where the desk lives and what became of its contacts: facts of the log that no table shows. */
export const keptSafeFolds = {
  'desk.moved-out': () => [],
  'desk.taken-over': () => [],
  'contacts.passphrase-set': () => [],
  'contacts.purged': () => [],
} satisfies Partial<Folds>
