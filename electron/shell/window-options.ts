/** How windows are made. What is safe by default is said all the same: a default can change. */
import type { BrowserWindowConstructorOptions, WebPreferences } from 'electron'

const safe: WebPreferences = {
  sandbox: true,
  contextIsolation: true,
  nodeIntegration: false,
  nodeIntegrationInSubFrames: false,
  nodeIntegrationInWorker: false,
  webSecurity: true,
  allowRunningInsecureContent: false,
  experimentalFeatures: false,
  webviewTag: false,
  // Its dictionaries would be fetched over a network.
  spellcheck: false,
}

/** A window of the desk, which alone is given the preload. */
export function deskWindow(preload: string): BrowserWindowConstructorOptions {
  return {
    title: 'Duskline',
    width: 1360,
    height: 900,
    minWidth: 800,
    minHeight: 600,
    show: false,
    webPreferences: { ...safe, preload },
  }
}

/** A window for a PDF: Chromium's own viewer counts as a plug-in. */
export const documentWindow: BrowserWindowConstructorOptions = {
  width: 900,
  height: 1000,
  autoHideMenuBar: true,
  webPreferences: { ...safe, plugins: true },
}
