import { connect, createServer } from 'node:net'
import { networkInterfaces } from 'node:os'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { comeIn, type Hosted, host, ownPage } from './support/hosted.ts'

let desk: Hosted
let cookie: string
beforeAll(async () => {
  desk = await host()
  cookie = await comeIn(desk)
})
afterAll(() => desk.close())

const note = '/call/note.add?window=12345678'
const get = (path: string, headers: Record<string, string> = {}) =>
  desk.ask(path, { headers: { Cookie: cookie, ...headers } })
const post = (
  path: string,
  body: string | Buffer,
  headers: Record<string, string | undefined> = {},
) =>
  desk.ask(path, {
    method: 'POST',
    headers: defined({ ...ownPage(desk, cookie), ...headers }),
    body,
  })
const defined = (headers: Record<string, string | undefined>) =>
  Object.fromEntries(Object.entries(headers).filter(([, value]) => value !== undefined))

describe('a request under another name than our own', () => {
  // DNS rebinding: a foreign page makes its own name point at 127.0.0.1 and is then "same origin".
  test.each(['localhost', 'evil.example', '127.0.0.1', '127.0.0.1:1', '[::1]'])(
    'is turned away: Host %s',
    async (Host) => {
      expect((await get('/', { Host })).status).toBe(421)
    },
  )
})

describe('a request of another page', () => {
  test.each(['http://evil.example', 'http://127.0.0.1:1', 'null', 'http://localhost'])(
    'is turned away: Origin %s',
    async (Origin) => {
      expect((await get('/', { Origin })).status).toBe(403)
      expect((await post(note, '"x"', { Origin })).status).toBe(403)
    },
  )

  test.each(['cross-site', 'same-site'])('is turned away: Sec-Fetch-Site %s', async (site) => {
    expect((await get('/', { 'Sec-Fetch-Site': site })).status).toBe(403)
    expect((await post(note, '"x"', { 'Sec-Fetch-Site': site })).status).toBe(403)
  })

  test('has its preflight turned away, with nothing that would allow it', async () => {
    const answer = await desk.ask(note, { method: 'OPTIONS', headers: ownPage(desk, cookie) })
    expect(answer.status).toBe(405)
    expect(Object.keys(answer.headers).filter((name) => name.startsWith('access-control'))).toEqual(
      [],
    )
  })

  test('as a form, without JSON or without an origin, is turned away', async () => {
    expect((await post(note, '"x"', { 'Content-Type': 'text/plain' })).status).toBe(415)
    expect((await post(note, '"x"', { 'Content-Type': undefined })).status).toBe(415)
    expect((await post(note, '"x"', { Origin: undefined })).status).toBe(415)
  })

  test('leaves nothing in the log', () => {
    expect(desk.desk.notes).toEqual([])
  })
})

describe('the desk’s own page', () => {
  test('is answered', async () => {
    expect((await get('/', { 'Sec-Fetch-Site': 'none' })).status).toBe(200)
    const answer = await post('/call/notes?window=12345678', '{}', {
      'Content-Type': 'application/json; charset=utf-8',
      'Sec-Fetch-Site': 'same-origin',
    })
    expect(JSON.parse(answer.text)).toEqual({ ok: true, value: [] })
  })

  test.each(['PUT', 'DELETE', 'PATCH', 'HEAD'])('has no use for %s', async (method) => {
    expect((await desk.ask('/', { method, headers: ownPage(desk, cookie) })).status).toBe(405)
  })

  test.each(['/', '/nothing', '/enter', '/call/notes'])(
    'and every other answer carries the guarding headers: %s',
    async (path) => {
      const { headers } = await get(path)
      expect(headers['content-security-policy']).toMatch(/^default-src 'none'; script-src 'self';/)
      expect(headers['content-security-policy']).toContain("frame-ancestors 'none'")
      expect(headers['content-security-policy']).not.toMatch(/unsafe|\*|https?:/)
      expect(headers).toMatchObject({
        'cross-origin-resource-policy': 'same-origin',
        'x-content-type-options': 'nosniff',
        'referrer-policy': 'no-referrer',
        'cache-control': 'no-store',
      })
    },
  )
})

describe('a path', () => {
  test.each([
    '/../package.json',
    '/..%2fpackage.json',
    '/%2e%2e/package.json',
    '/assets/../../package.json',
    '/..\\package.json',
    '/%5c..%5cpackage.json',
    '//package.json',
    '/etc/passwd',
    '/index.html%00.js',
    '/index.html/',
    '/notes.md',
    '/__proto__',
    '/constructor',
  ])('that is no screen leads nowhere: %s', async (path) => {
    expect((await get(path)).status).toBe(404)
  })

  test.each(['/%', '/%zz', '/%c0%ae%c0%ae/', '/call/%'])(
    'that cannot be read is said to be so: %s',
    async (path) => {
      expect((await get(path)).status).toBe(400)
    },
  )

  test('that names a screen gives it with its type', async () => {
    expect((await get('/desk.js')).headers['content-type']).toBe('text/javascript; charset=utf-8')
    expect((await get('/?from=start')).text).toContain('<title>Desk</title>')
  })
})

describe('a command', () => {
  test.each(['__proto__', 'constructor', 'toString', '%2e%2e%2fwho', 'no.such'])(
    'that the desk does not know is refused by it: %s',
    async (name) => {
      const answer = await post(`/call/${name}?window=12345678`, '{}')
      expect(JSON.parse(answer.text)).toMatchObject({ refusal: { code: 'no-such-command' } })
    },
  )

  test.each([
    '',
    '?window=',
    '?window=short',
    '?window=../../../../x',
    `?window=${'x'.repeat(65)}`,
  ])('of a window without a name is turned away: %s', async (query) => {
    expect((await post(`/call/who${query}`, '{}')).status).toBe(404)
  })

  test.each(['', '{', 'undefined', '{"a":1}}', "{'a':1}"])(
    'that is not JSON is refused: %j',
    async (body) => {
      const answer = await post(note, body)
      expect(answer.status).toBe(400)
      expect(JSON.parse(answer.text)).toMatchObject({ refusal: { code: 'not-json' } })
    },
  )

  test('that is not UTF-8 is refused', async () => {
    expect((await post(note, Buffer.from([0x22, 0xff, 0x22]))).status).toBe(400)
  })

  test('of 2 MB is refused, and the next one is answered', async () => {
    const answer = await post(note, JSON.stringify('x'.repeat(2_000_000)))
    expect(answer.status).toBe(413)
    expect(answer.headers.connection).toBe('close')
    expect(JSON.parse(answer.text)).toMatchObject({ refusal: { code: 'body-too-long' } })
    expect((await post('/call/who?window=12345678', '{}')).status).toBe(200)
  })

  test('that meets a fault says so, and tells nothing of the machinery', async () => {
    const told = vi.spyOn(console, 'error').mockReturnValue()
    const answer = await post('/call/fault?window=12345678', '{}')
    expect(answer.status).toBe(500)
    expect(JSON.parse(answer.text)).toMatchObject({ refusal: { code: 'desk-fault' } })
    expect(answer.text).not.toContain('SQLITE')
    expect(told).toHaveBeenCalledOnce()
    told.mockRestore()
  })
})

describe('the network', () => {
  const outside = Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .find(({ internal, family }) => !internal && family === 'IPv4')

  test.skipIf(outside === undefined)('cannot reach the desk', async () => {
    const socket = connect({ host: outside?.address ?? '', port: desk.port })
    const outcome = await new Promise((resolve) => {
      socket.once('connect', () => resolve('reached'))
      socket.once('error', (error: NodeJS.ErrnoException) => resolve(error.code))
    })
    socket.destroy()
    expect(outcome).toBe('ECONNREFUSED')
  })

  test('cannot take the desk’s port without the person hearing of it', async () => {
    const taken = createServer()
    await new Promise<void>((resolve) => taken.listen(0, '127.0.0.1', resolve))
    const { port } = taken.address() as { port: number }
    await expect(host({ port })).rejects.toThrow('is taken by another program')
    taken.close()
  })
})
