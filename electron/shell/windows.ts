/** The windows of the desk, one session each: a change of person in one leaves the others alone. */
import { BrowserWindow, type WebContents } from 'electron'
import type { Desk, Session } from '../desk/desk.ts'
import { entryUrl } from './addresses.ts'
import { changesChannel } from './channels.ts'
import { deskWindow } from './window-options.ts'

export interface Windows {
  readonly open: () => void
  /** Brings an open window to the front, or opens one. */
  readonly show: () => void
  /** The session of a window of ours; `undefined` for any other. */
  readonly sessionOf: (contents: WebContents) => Session | undefined
  /** Sends news to every window. */
  readonly tell: (topics: readonly string[]) => void
}

export function createWindows(desk: Desk, preload: string): Windows {
  const sessions = new Map<BrowserWindow, Session>()

  function open(): void {
    const window = new BrowserWindow(deskWindow(preload))
    const session = desk.openSession()
    sessions.set(window, session)
    window.once('ready-to-show', () => window.show())
    window.once('closed', () => {
      sessions.delete(window)
      desk.closeSession(session)
    })
    void window.loadURL(entryUrl)
  }

  return {
    open,
    show() {
      const [window] = sessions.keys()
      if (window === undefined) return open()
      if (window.isMinimized()) window.restore()
      window.focus()
    },
    sessionOf: (contents) => [...sessions].find(([window]) => window.webContents === contents)?.[1],
    tell(topics) {
      for (const window of sessions.keys()) window.webContents.send(changesChannel, topics)
    },
  }
}
