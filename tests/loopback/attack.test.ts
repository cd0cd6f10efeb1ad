/** What some program or page on the same computer could try. */
import { connect } from 'node:net'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { leadPin, setUpInput, TestDesk } from '../support/desk.ts'
import { comeIn, type Hosted, host, ownPage } from './support/hosted.ts'

let desk: Hosted
let cookie: string
beforeAll(async () => {
  desk = await host()
  cookie = await comeIn(desk)
})
afterAll(() => desk.close())

/** The same row of chances at every run: MINSTD (Park and Miller 1988, revised 1993). */
function chances(seed: number): (below: number) => number {
  let state = seed
  return (below) => {
    state = (state * 48_271) % 2_147_483_647
    return state % below
  }
}

const methods = ['GET', 'POST', 'PUT', 'OPTIONS', 'TRACE', 'get', 'PO ST', '']
const paths = [
  '/',
  '/call/who',
  '/call/%',
  '//',
  '/..%2f..',
  '/changes',
  '/enter?token=',
  '*',
  '/\u0000',
]
const versions = ['HTTP/1.1', 'HTTP/1.0', 'HTTP/9.9', '']
const headers = [
  'Host: evil.example',
  'Content-Length: -1',
  'Content-Length: 99999999999999999999',
  'Transfer-Encoding: chunked',
  'Cookie: duskline-1=x; =; ;;',
  'Origin: null',
  `X: ${'x'.repeat(20_000)}`,
  ': nothing',
  'Content-Type: application/json',
]

function malformed(next: (below: number) => number, port: number): string {
  const pick = (from: readonly string[]) => from[next(from.length)] ?? ''
  const lines = [`${pick(methods)} ${pick(paths)} ${pick(versions)}`]
  if (next(2) === 0) lines.push(`Host: 127.0.0.1:${port}`)
  for (let count = next(4); count > 0; count -= 1) lines.push(pick(headers))
  return `${lines.join(next(5) === 0 ? '\n' : '\r\n')}\r\n\r\n${'{"a":'.repeat(next(3))}`
}

/** Sends bytes as they are and hangs up; answers with what came back first. */
function send(port: number, text: string): Promise<string> {
  return new Promise((resolve) => {
    let answer = ''
    const socket = connect({ host: '127.0.0.1', port })
    const end = () => {
      socket.destroy()
      resolve(answer)
    }
    socket.setTimeout(2000, end)
    socket.on('data', (chunk: Buffer) => {
      answer += chunk.toString('latin1')
      end()
    })
    socket.on('error', end).on('close', end)
    socket.end(text)
  })
}

describe('ten thousand malformed requests', () => {
  test('are each turned away, and the desk answers its own page as before', {
    timeout: 120_000,
  }, async () => {
    const next = chances(20_261_114)
    const statuses = new Set<string>()
    for (let sent = 0; sent < 10_000; sent += 50) {
      const batch = Array.from({ length: 50 }, () => send(desk.port, malformed(next, desk.port)))
      for (const answer of await Promise.all(batch)) statuses.add(answer.slice(9, 12))
    }
    expect([...statuses].filter((status) => /^[25]/.test(status))).toEqual([])
    expect(desk.desk.notes).toEqual([])
    const answer = await desk.ask('/call/who?window=12345678', {
      method: 'POST',
      headers: ownPage(desk, cookie),
      body: '{}',
    })
    expect(answer.status).toBe(200)
  })
})

describe('a form of another site', () => {
  test.each(['application/x-www-form-urlencoded', 'multipart/form-data', 'text/plain'])(
    'as %s leaves nothing behind, though the browser would send the cookie along',
    async (type) => {
      const answer = await desk.ask('/call/note.add?window=12345678', {
        method: 'POST',
        headers: {
          Cookie: cookie,
          Origin: 'http://evil.example',
          'Content-Type': type,
          'Sec-Fetch-Site': 'cross-site',
        },
        body: '"forged"',
      })
      expect(answer.status).toBe(403)
      expect(desk.desk.notes).toEqual([])
    },
  )
})

describe('guessing a PIN', () => {
  test('from one window or many is stopped after five wrong ones, for the right one too', async () => {
    const station = new TestDesk()
    const { lead } = await station.ask('station.setUp', setUpInput)
    const hosted = await host({ desk: station.desk })
    const key = await comeIn(hosted)
    const guess = async (pin: string, window: number) => {
      const answer = await hosted.ask(`/call/person.signIn?window=window-${window}`, {
        method: 'POST',
        headers: ownPage(hosted, key),
        body: JSON.stringify({ person: lead, pin }),
      })
      return (JSON.parse(answer.text) as { refusal?: { code: string } }).refusal?.code
    }
    const guesses = await Promise.all([1, 2, 3, 4, 5].map((each) => guess(`000${each}`, each)))
    expect(new Set(guesses)).toEqual(new Set(['pin-wrong']))
    expect(await guess(leadPin, 1)).toBe('pin-wait')
    station.wait(1)
    expect(await guess(leadPin, 1)).toBeUndefined()
    await hosted.close()
    await station.end()
  })
})

describe('a window that has closed', () => {
  test('takes its person along: its name alone opens nothing', async () => {
    const sign = (name: string, input: unknown) =>
      desk.ask(`/call/${name}?window=closing-1`, {
        method: 'POST',
        headers: ownPage(desk, cookie),
        body: JSON.stringify(input),
      })
    await sign('person.signIn', 'Ada')
    expect((await sign('who', {})).text).toContain('Ada')
    await new Promise((resolve) => setTimeout(resolve, 500))
    expect((await sign('who', {})).text).toContain('nobody')
  })
})
