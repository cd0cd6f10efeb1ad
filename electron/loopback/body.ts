/** The JSON body of a request, read as far as is reasonable. */
import type { IncomingMessage } from 'node:http'
import { granted, type Result, refused } from '../../shared-types/result.ts'

/** Bytes: room for a signature or a day's worth of corrections, none for filling the memory. */
export const mostBytes = 1_048_576

/** Reads a body; refuses one that is too long (`body-too-long`) or is not JSON in UTF-8 (`not-json`). */
export async function readBody(request: IncomingMessage): Promise<Result<unknown>> {
  const chunks: Buffer[] = []
  let length = 0
  for await (const chunk of request) {
    length += chunk.length
    // The rest is read and dropped: a socket closed in mid-sentence would lose our answer.
    if (length <= mostBytes) chunks.push(chunk)
  }
  if (length > mostBytes)
    return refused('body-too-long', 'That is more than the desk takes at once.', 'Send less.')
  return parse(Buffer.concat(chunks))
}

function parse(bytes: Buffer): Result<unknown> {
  try {
    return granted(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)))
  } catch {
    return refused('not-json', 'The desk could not read that.', 'Reload the window and try again.')
  }
}
