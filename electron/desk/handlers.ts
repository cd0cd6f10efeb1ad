/** Which code answers which call; a call without one does not compile. */
import { aheadQueries } from './ahead.ts'
import { animalCommands, animalQueries } from './animals.ts'
import { benchCommands, benchQueries } from './bench.ts'
import type { CommandHandlers, OpenHandlers, QueryHandlers, ShelfHandlers } from './call.ts'
import { boardQueries } from './board.ts'
import { coldCommands, coldQueries } from './cold.ts'
import { contactCalls, contactCommands } from './contacts.ts'
import { closeCommands, closeQueries } from './close.ts'
import { coolerCommands, coolerQueries } from './coolers.ts'
import { coverageCommands, coverageQueries } from './coverage.ts'
import { custodyQueries } from './custody.ts'
import { forecastCommands, forecastQueries } from './forecast.ts'
import { moveCalls, moveCommands } from './desk-move.ts'
import { guideQueries } from './guide.ts'
import { handoffCommands, handoffQueries } from './handoff.ts'
import { handoverCommands, handoverQueries } from './handover.ts'
import { kitCommands, kitQueries } from './kits.ts'
import { labelCommands, labelQueries } from './labels.ts'
import { discrepancyCommands, discrepancyQueries } from './discrepancies.ts'
import { ledgerQueries } from './ledger.ts'
import { lineQueries } from './line.ts'
import { manifestCheckQueries } from './manifest-check.ts'
import { mergeCalls } from './merge.ts'
import { numberQueries } from './number.ts'
import { officeCalls } from './office.ts'
import { peopleCommands, peopleQueries, signingIn } from './people.ts'
import { printingCalls, printingCommands } from './printing.ts'
import { practiceCalls } from './practice-day.ts'
import { practiceLiveCalls } from './practice-live.ts'
import { receiptCommands, receiptQueries } from './receipts.ts'
import { resultCommands, resultQueries } from './results/handlers.ts'
import { safekeepingCalls, safekeepingCommands } from './safekeeping.ts'
import { seekQueries } from './seek.ts'
import { shelfCalls, stationCommands } from './station.ts'
import { stockCommands, stockQueries } from './stocks.ts'
import { stationCloseCommands, stationCloseQueries } from './station-close.ts'
import { takeBackCommands, takeBackQueries } from './take-back.ts'
import { tableQueries } from './table.ts'
import { tourCalls } from './tour.ts'

export const shelfHandlers: ShelfHandlers = {
  ...shelfCalls,
  ...practiceCalls,
  ...practiceLiveCalls,
  ...mergeCalls,
  ...officeCalls,
  ...safekeepingCalls,
  ...tourCalls,
  ...moveCalls,
  ...contactCalls,
  ...printingCalls,
}

export const openHandlers: OpenHandlers = signingIn

export const queryHandlers: QueryHandlers = {
  ...peopleQueries,
  ...lineQueries,
  ...boardQueries,
  ...forecastQueries,
  ...aheadQueries,
  ...animalQueries,
  ...benchQueries,
  ...kitQueries,
  ...labelQueries,
  ...stockQueries,
  ...coolerQueries,
  ...coldQueries,
  ...custodyQueries,
  ...manifestCheckQueries,
  ...receiptQueries,
  ...closeQueries,
  ...guideQueries,
  ...seekQueries,
  ...handoverQueries,
  ...stationCloseQueries,
  ...ledgerQueries,
  ...handoffQueries,
  ...numberQueries,
  ...tableQueries,
  ...takeBackQueries,
  ...discrepancyQueries,
  ...resultQueries,
  ...coverageQueries,
}

export const commandHandlers: CommandHandlers = {
  ...peopleCommands,
  ...stationCommands,
  ...safekeepingCommands,
  ...moveCommands,
  ...contactCommands,
  ...animalCommands,
  ...forecastCommands,
  ...benchCommands,
  ...kitCommands,
  ...labelCommands,
  ...stockCommands,
  ...printingCommands,
  ...coolerCommands,
  ...coldCommands,
  ...receiptCommands,
  ...closeCommands,
  ...handoverCommands,
  ...stationCloseCommands,
  ...handoffCommands,
  ...discrepancyCommands,
  ...resultCommands,
  ...coverageCommands,
  ...takeBackCommands,
}
