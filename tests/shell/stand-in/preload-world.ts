/** What a sandboxed preload finds around it: `require('electron')` and no other module. */

/** Runs in the page before its own scripts. Gives the preload an ipcRenderer over Playwright's binding. */
function surround(runPreload: (require: (name: string) => unknown) => void): void {
  type Listener = (event: object, ...args: unknown[]) => void
  const listeners = new Map<string, Set<Listener>>()
  const world = window as unknown as {
    invokeMain: (channel: string, args: unknown[]) => Promise<unknown>
    hearMain: (channel: string, args: unknown[]) => void
  }
  world.hearMain = (channel, args) => {
    for (const listener of listeners.get(channel) ?? [])
      listener({ sender: 'ipcRenderer' }, ...args)
  }
  const electron = {
    contextBridge: {
      exposeInMainWorld: (name: string, api: object) =>
        Object.defineProperty(window, name, { value: Object.freeze({ ...api }) }),
    },
    ipcRenderer: {
      invoke: (channel: string, ...args: unknown[]) => world.invokeMain(channel, args),
      on: (channel: string, listener: Listener) =>
        listeners.set(channel, (listeners.get(channel) ?? new Set()).add(listener)),
      off: (channel: string, listener: Listener) => listeners.get(channel)?.delete(listener),
    },
  }
  runPreload((name) => {
    if (name !== 'electron') throw new Error(`A sandboxed preload cannot require '${name}'.`)
    return electron
  })
}

/** A classic script that runs the preload in the main frame, as Electron does. */
export function preloadScript(code: string): string {
  return `if (window === window.top) (${surround.toString()})((require) => {
    const module = { exports: {} }, exports = module.exports
    ${code}
  })`
}
