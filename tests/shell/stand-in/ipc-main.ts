/** The main process's end of the line to the pages. */

type Handler = (event: unknown, ...args: unknown[]) => unknown

const handlers = new Map<string, Handler>()

export const ipcMain = {
  handle(channel: string, handler: Handler): void {
    if (handlers.has(channel)) throw new Error(`A second handler for '${channel}'.`)
    handlers.set(channel, handler)
  },
  /** What Electron does when a page invokes. */
  async receive(channel: string, event: unknown, args: unknown[]): Promise<unknown> {
    const handler = handlers.get(channel)
    if (handler === undefined) throw new Error(`No handler registered for '${channel}'.`)
    return handler(event, ...args)
  },
}
