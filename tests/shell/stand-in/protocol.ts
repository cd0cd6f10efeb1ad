/** The program's own scheme. */
import type { Route } from 'playwright-core'

type Handler = (request: Request) => Response | Promise<Response>

let handler: Handler | undefined
let privileges: object | undefined

export const protocol = {
  registerSchemesAsPrivileged(schemes: { scheme: string; privileges?: object }[]): void {
    if (privileges !== undefined) throw new Error('Schemes can be declared only once.')
    privileges = schemes.find(({ scheme }) => scheme === 'app')?.privileges
  },
  handle(scheme: string, answer: Handler): void {
    if (scheme === 'app') handler = answer
  },
}

/** What the program declared of its scheme. */
export function declared(): object | undefined {
  return privileges
}

/** Answers a request of a page through the program's handler. */
export async function answer(route: Route, url: string): Promise<void> {
  const response = await handler?.(new Request(url, { method: route.request().method() }))
  if (response === undefined) return route.abort('failed')
  await route.fulfill({
    status: response.status,
    headers: Object.fromEntries(response.headers),
    body: Buffer.from(await response.arrayBuffer()),
  })
}
