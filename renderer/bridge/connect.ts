/** The one way a screen reaches the desk: through the window's own bridge, else over HTTP. */
import type { Bridge } from '../../shared-types/bridge.ts'
import { connectHttp } from './http.ts'

declare global {
  interface Window {
    /** Made by Electron's preload; absent in a browser. */
    readonly duskline?: Bridge
  }
}

/** A bridge that also knows whether the desk at its other end is there. */
export interface Connection extends Bridge {
  /** Tells now, and at each change, whether the desk answers. Returns the way to stop. */
  readonly onReach: (listener: (reachable: boolean) => void) => () => void
}

/** Connects this window to the desk. Call once, when the page starts. */
export function connect(): Connection {
  return window.duskline === undefined ? connectHttp() : connectInProcess(window.duskline)
}

/** In Electron the desk lives in the process that owns the window: one is not there without the other. */
function connectInProcess(bridge: Bridge): Connection {
  return {
    ...bridge,
    onReach(listener) {
      listener(true)
      return () => {}
    },
  }
}
