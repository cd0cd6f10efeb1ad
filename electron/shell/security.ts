/** What no page may do, in any window: leave, open what is not ours, embed, or ask for a device. */
import type { Session, WebContents, WindowOpenHandlerResponse } from 'electron'
import { isEntry, isOwnBlob, mayLoad } from './addresses.ts'
import { documentWindow } from './window-options.ts'

/**
 * Denies every permission, asked for or merely looked up, but the camera's picture for our own page, which
 * may stand in for a scanner; and every request that leaves the program.
 */
export function denyPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, answer, asked) =>
    answer(isOwnCamera(permission, asked)),
  )
  session.setPermissionCheckHandler((_contents, permission, _origin, asked) =>
    isOwnCamera(permission, asked),
  )
  session.setDevicePermissionHandler(() => false)
  session.webRequest.onBeforeRequest(({ url }, answer) => answer({ cancel: !mayLoad(url) }))
}

/** What is told of a page that asks for a permission, or looks one up. */
interface Asked {
  readonly isMainFrame?: boolean
  readonly requestingUrl?: string
  readonly mediaTypes?: readonly string[]
  readonly mediaType?: string
}

/** The picture alone, without sound, for the page of the desk itself and nothing within it. */
function isOwnCamera(permission: string, asked: Asked | undefined): boolean {
  if (permission !== 'media' || asked?.isMainFrame !== true) return false
  const media = asked.mediaTypes ?? [asked.mediaType]
  return media.length === 1 && media[0] === 'video' && isEntry(asked.requestingUrl ?? '')
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
