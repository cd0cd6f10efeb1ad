/** How every answer leaves: with the headers that keep other pages out, and never cached. */
import type { ServerResponse } from 'node:http'
import type { Result } from '../../shared-types/result.ts'

/**
 * What the screens may load: their own files, pictures they made themselves, and a PDF that they
 * hold as a blob, shown in a frame or a window of its own.
 */
export const contentPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
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
export const readerPolicy =
  "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'none'"

/** The worker that reads the camera's pictures, as it is built. */
export function isReader(path: string): boolean {
  return /^\/assets\/reader-worker-[\w-]+\.js$/.test(path)
}

/** Sent with every answer, whatever it is. */
const guarding = {
  'Content-Security-Policy': contentPolicy,
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  // A camera may stand in for a scanner, for our own page alone; a browser asks the person besides.
  'Permissions-Policy': 'camera=(self), microphone=(), geolocation=(), display-capture=()',
  'Cache-Control': 'no-store',
}

/** Begins an answer; the body is the caller's. */
export function begin(
  response: ServerResponse,
  status: number,
  headers: Readonly<Record<string, string>>,
): ServerResponse {
  return response.writeHead(status, { ...guarding, ...headers })
}

/** Answers with one sentence for a person. */
export function answerText(
  response: ServerResponse,
  status: number,
  say: string,
  headers: Readonly<Record<string, string>> = {},
): void {
  begin(response, status, { 'Content-Type': 'text/plain; charset=utf-8', ...headers }).end(
    `${say}\n`,
  )
}

/** Answers with the envelope of the desk. */
export function answerResult(
  response: ServerResponse,
  status: number,
  result: Result<unknown>,
  headers: Readonly<Record<string, string>> = {},
): void {
  const body = JSON.stringify(result)
  begin(response, status, { 'Content-Type': 'application/json; charset=utf-8', ...headers }).end(
    body,
  )
}
