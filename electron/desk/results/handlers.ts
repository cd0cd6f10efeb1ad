/** The calls of laboratory results, all in one. */
import type { CommandHandlers, QueryHandlers } from '../call.ts'
import { resultAnimalQueries } from './animals.ts'
import { doubtCommands, doubtQueries } from './doubts.ts'
import { importCommands, importQueries } from './import.ts'
import { letterQueries } from './letters.ts'
import { lookQueries } from './look.ts'
import { overviewCommands, overviewQueries } from './overview.ts'
import { practiceFileQueries } from './practice-file.ts'
import { retentionQueries } from './retention.ts'
import { tellingCommands, tellingQueries } from './telling.ts'
import { trainingQueries } from './training.ts'

export const resultQueries = {
  ...overviewQueries,
  ...lookQueries,
  ...importQueries,
  ...doubtQueries,
  ...resultAnimalQueries,
  ...letterQueries,
  ...tellingQueries,
  ...trainingQueries,
  ...retentionQueries,
  ...practiceFileQueries,
} satisfies Partial<QueryHandlers>

export const resultCommands = {
  ...overviewCommands,
  ...importCommands,
  ...doubtCommands,
  ...tellingCommands,
} satisfies Partial<CommandHandlers>
