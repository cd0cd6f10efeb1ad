/** The one place that listens to windows: every message passes the same checks or is refused. */
import { type IpcMainInvokeEvent, ipcMain, type WebContents } from 'electron'
import { deskFault } from '../../shared-types/bridge.ts'
import type { Result } from '../../shared-types/result.ts'
import type { Desk, Session } from '../desk/desk.ts'
import { CallMessage, isOwnPage, malformed, notOurPage } from './call.ts'
import { callChannel } from './channels.ts'

/** Answers the calls of known windows; `sessionOf` knows them. */
export function answerCalls(
  desk: Desk,
  sessionOf: (contents: WebContents) => Session | undefined,
): void {
  const answer = async (event: IpcMainInvokeEvent, message: unknown): Promise<Result<unknown>> => {
    const session = sessionOf(event.sender)
    if (session === undefined || !isOwnPage(event.senderFrame)) return notOurPage
    const call = CallMessage.safeParse(message)
    if (!call.success) return malformed
    return desk.call(session, ...call.data).catch(fault)
  }
  ipcMain.handle(callChannel, (event, ...message: unknown[]) => answer(event, message))
}

/** Thrown across processes an error would keep only its message, so it is told here and answered there. */
function fault(error: unknown): Result<never> {
  console.error(error)
  return { ok: false, refusal: deskFault }
}
