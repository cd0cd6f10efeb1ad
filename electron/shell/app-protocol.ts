/** The screens at `app://duskline`, a secure origin of their own, which a file on the disk is not. */
import { readFile } from 'node:fs/promises'
import { protocol } from 'electron'
import { ownOrigin, scheme } from './addresses.ts'
import { screenFile } from './screen-file.ts'

/**
 * What the screens may load: their own files, pictures they made themselves, and a PDF that they
 * hold as a blob. They may connect to nothing: the desk is reached through the preload alone.
 */
export const contentPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'none'",
  'frame-src blob:',
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ')

/**
 * A worker's file brings its own policy, so that the page need not have it: only the worker that reads the
 * camera's pictures may compile WebAssembly, which nothing else permits, and it may connect to nothing.
 */
const readerPolicy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'none'"

/** The worker that reads the camera's pictures, as it is built. */
const readerPath = /^\/assets\/reader-worker-[\w-]+\.js$/

function ownPolicy(pathname: string): { 'Content-Security-Policy'?: string } {
  return readerPath.test(pathname) ? { 'Content-Security-Policy': readerPolicy } : {}
}

const guarding = {
  'Content-Security-Policy': contentPolicy,
  'Cross-Origin-Resource-Policy': 'same-origin',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  // A camera may stand in for a scanner, for our own page alone.
  'Permissions-Policy': 'camera=(self), microphone=(), geolocation=(), display-capture=()',
}

/** Makes the scheme a secure one with an origin. Electron takes this only before it is ready, and once. */
export function declareScheme(): void {
  protocol.registerSchemesAsPrivileged([{ scheme, privileges: { standard: true, secure: true } }])
}

/** Serves the built screens that lie in `root`. */
export function serveScreens(root: string): void {
  protocol.handle(scheme, (request) => answerScreen(root, request))
}

/** The answer to one request: a screen, or an empty refusal. */
export async function answerScreen(
  root: string,
  { method, url }: { readonly method: string; readonly url: string },
): Promise<Response> {
  if (method !== 'GET') return refuse(405)
  const { protocol: asked, host, pathname } = new URL(url)
  const file = `${asked}//${host}` === ownOrigin ? screenFile(root, pathname) : undefined
  const body = file && (await readFile(file.path).catch(() => undefined))
  if (file === undefined || body === undefined) return refuse(404)
  return new Response(new Uint8Array(body), {
    headers: { ...guarding, 'Content-Type': file.type, ...ownPolicy(pathname) },
  })
}

function refuse(status: number): Response {
  return new Response(null, { status, headers: guarding })
}
