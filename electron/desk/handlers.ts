/** Which code answers which call; a call without one does not compile. */
import { animalCommands, animalQueries } from './animals.ts'
import { benchCommands, benchQueries } from './bench.ts'
import type { CommandHandlers, OpenHandlers, QueryHandlers, ShelfHandlers } from './call.ts'
import { boardQueries } from './board.ts'
import { contactCalls, contactCommands } from './contacts.ts'
import { closeCommands, closeQueries } from './close.ts'
import { coolerCommands, coolerQueries } from './coolers.ts'
import { moveCalls, moveCommands } from './desk-move.ts'
import { handoffCommands, handoffQueries } from './handoff.ts'
import { kitCommands, kitQueries } from './kits.ts'
import { lineQueries } from './line.ts'
import { numberQueries } from './number.ts'
import { peopleCommands, peopleQueries, signingIn } from './people.ts'
import { practiceCalls } from './practice-day.ts'
import { safekeepingCalls, safekeepingCommands } from './safekeeping.ts'
import { shelfCalls, stationCommands } from './station.ts'
import { tableQueries } from './table.ts'

export const shelfHandlers: ShelfHandlers = {
  ...shelfCalls,
  ...practiceCalls,
  ...safekeepingCalls,
  ...moveCalls,
  ...contactCalls,
}

export const openHandlers: OpenHandlers = signingIn

export const queryHandlers: QueryHandlers = {
  ...peopleQueries,
  ...lineQueries,
  ...boardQueries,
  ...animalQueries,
  ...benchQueries,
  ...kitQueries,
  ...coolerQueries,
  ...closeQueries,
  ...handoffQueries,
  ...numberQueries,
  ...tableQueries,
}

export const commandHandlers: CommandHandlers = {
  ...peopleCommands,
  ...stationCommands,
  ...safekeepingCommands,
  ...moveCommands,
  ...contactCommands,
  ...animalCommands,
  ...benchCommands,
  ...kitCommands,
  ...coolerCommands,
  ...closeCommands,
  ...handoffCommands,
}
