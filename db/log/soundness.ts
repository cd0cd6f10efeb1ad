/** What every opened file is asked before it is used. */
import type { DeskId } from '../../shared-types/sample-number.ts'
import type { Connection } from '../connection.ts'

/** Whether every page of the file is there and well-formed. */
export function isSound(connection: Connection): boolean {
  return connection.pragma('quick_check(1)', { simple: true }) === 'ok'
}

/** The desk a log belongs to; undefined if the file does not say. */
export function ownDeskOf(connection: Connection): DeskId | undefined {
  return connection.prepare<[], DeskId>('SELECT desk FROM own_desk').pluck().get()
}
