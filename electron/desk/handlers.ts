/** Which code answers which call; a call without one does not compile. */
import { animalCommands, animalQueries } from './animals.ts'
import { benchCommands, benchQueries } from './bench.ts'
import type { CommandHandlers, OpenHandlers, QueryHandlers, ShelfHandlers } from './call.ts'
import { closeCommands, closeQueries } from './close.ts'
import { coolerCommands, coolerQueries } from './coolers.ts'
import { handoffCommands, handoffQueries } from './handoff.ts'
import { kitCommands, kitQueries } from './kits.ts'
import { lineQueries } from './line.ts'
import { numberQueries } from './number.ts'
import { peopleCommands, peopleQueries, signingIn } from './people.ts'
import { practiceCalls } from './practice-day.ts'
import { shelfCalls, stationCommands } from './station.ts'
import { tableQueries } from './table.ts'

export const shelfHandlers: ShelfHandlers = { ...shelfCalls, ...practiceCalls }

export const openHandlers: OpenHandlers = signingIn

export const queryHandlers: QueryHandlers = {
  ...peopleQueries,
  ...lineQueries,
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
  ...animalCommands,
  ...benchCommands,
  ...kitCommands,
  ...coolerCommands,
  ...closeCommands,
  ...handoffCommands,
}
