/** The windows of the desk, one session each: a change of person in one leaves the others alone. */
import { BrowserWindow, type WebContents } from 'electron'
import type { Desk, Session } from '../desk/desk.ts'
import { boardUrl, entryUrl } from './addresses.ts'
import { changesChannel } from './channels.ts'
import { deskWindow } from './window-options.ts'
import { keepWindowState, readWindowState } from './window-state.ts'

export interface Windows {
  readonly open: () => void
  /** A window for a screen outside, which only shows the line. */
  readonly openBoard: () => void
  /** Brings an open window to the front, or opens one. */
  readonly show: () => void
  /** The session of a window of ours; `undefined` for any other. */
  readonly sessionOf: (contents: WebContents) => Session | undefined
  /** Sends news to every window. */
  readonly tell: (topics: readonly string[]) => void
}

export interface WindowPaths {
  readonly preload: string
  /** Where the place of the first window is kept. */
  readonly state: string
}

export function createWindows(desk: Desk, paths: WindowPaths): Windows {
  const sessions = new Map<BrowserWindow, Session>()

  function make(url: string): BrowserWindow {
    const kept = sessions.size === 0 ? readWindowState(paths.state) : undefined
    const window = new BrowserWindow({ ...deskWindow(paths.preload), ...kept })
    if (kept?.maximized) window.maximize()
    if (sessions.size === 0) keepWindowState(window, paths.state)
    const session = desk.openSession()
    sessions.set(window, session)
    window.once('ready-to-show', () => window.show())
    window.once('closed', () => {
      sessions.delete(window)
      desk.closeSession(session)
    })
    void window.loadURL(url)
    return window
  }

  const open = () => void make(entryUrl)
  return {
    open,
    openBoard: () => void make(boardUrl),
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
