/** What a desk keeps beside its logs: choices, backups, keys, and a diary of what the program did. */
import type { BackupKeeper } from './backup-keeper.ts'
import type { KeptChoices } from './choices.ts'
import type { Diary } from './diary.ts'
import type { KeyRing } from './key-ring.ts'

export interface Kept {
  readonly choices: KeptChoices
  readonly keeper: BackupKeeper
  readonly ring: KeyRing
  readonly diary: Diary
}
