/** What no page may do, in any window: leave, open what is not ours, embed, or ask for a device. */
import type { Session, WebContents, WindowOpenHandlerResponse } from 'electron'
import { isEntry, isOwnBlob, mayLoad } from './addresses.ts'
import { documentWindow } from './window-options.ts'

/** Denies every permission, asked for or merely looked up, and every request that leaves the program. */
export function denyPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
  session.setPermissionCheckHandler(() => false)
  session.setDevicePermissionHandler(() => false)
  session.webRequest.onBeforeRequest(({ url }, answer) => answer({ cancel: !mayLoad(url) }))
}

/** Keeps a page where it is. `openWindow` opens another window of the desk. */
export function confine(contents: WebContents, openWindow: () => void): void {
  contents.on('will-frame-navigate', (going) => {
    const allowed = going.isMainFrame ? isEntry(going.url) : mayLoad(going.url)
    if (!allowed) going.preventDefault()
  })
  contents.on('will-redirect', (going) => going.preventDefault())
  contents.on('will-attach-webview', (event) => event.preventDefault())
  contents.setWindowOpenHandler(({ url }) => answerOpening(url, openWindow))
}

/**
 * A document of our own page gets a plain window, from which it is printed or saved; our own page gets
 * a proper one, made by us with its own session.
 */
function answerOpening(url: string, openWindow: () => void): WindowOpenHandlerResponse {
  if (isOwnBlob(url)) return { action: 'allow', overrideBrowserWindowOptions: documentWindow }
  if (isEntry(url)) openWindow()
  return { action: 'deny' }
}
