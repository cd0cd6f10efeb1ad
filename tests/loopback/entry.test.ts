import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { comeIn, type Hosted, host } from './support/hosted.ts'

let desk: Hosted
beforeAll(async () => {
  desk = await host()
})
afterAll(() => desk.close())

const pathOf = (url: string) => new URL(url).pathname + new URL(url).search

describe('the address that opens the desk', () => {
  test('lets a browser in, and leaves no token in its address bar', async () => {
    const entered = await desk.ask(pathOf(desk.newUrl()))
    expect(entered.status).toBe(303)
    expect(entered.headers.location).toBe('/')
  })

  test('gives a key that pages and other sites cannot reach', async () => {
    const { headers } = await desk.ask(pathOf(desk.newUrl()))
    expect(headers['set-cookie']?.[0]).toMatch(
      new RegExp(`^duskline-${desk.port}=[\\w-]{43}; Path=/; HttpOnly; SameSite=Strict$`),
    )
  })

  test('works once: a token read from the list of processes opens nothing', async () => {
    const url = pathOf(desk.newUrl())
    await desk.ask(url)
    const replayed = await desk.ask(url)
    expect(replayed.status).toBe(403)
    expect(replayed.headers['set-cookie']).toBeUndefined()
  })

  test.each(['/enter', '/enter?token=', '/enter?token=guess', '/enter?token=__proto__'])(
    'is not to be guessed: %s',
    async (url) => {
      expect((await desk.ask(url)).status).toBe(403)
    },
  )

  test('lapses when many newer ones were given out', async () => {
    const first = pathOf(desk.newUrl())
    for (let i = 0; i < 16; i++) desk.newUrl()
    expect((await desk.ask(first)).status).toBe(403)
  })
})

describe('without the key', () => {
  test.each(['/', '/desk.js', '/changes?window=12345678'])('%s stays shut', async (path) => {
    const answer = await desk.ask(path)
    expect(answer.status).toBe(401)
    expect(answer.text).toContain('Open the address that Duskline printed')
  })

  test('a command is refused in the words of the desk', async () => {
    const headers = { Origin: desk.origin, 'Content-Type': 'application/json' }
    const answer = await desk.ask('/call/notes?window=12345678', {
      method: 'POST',
      headers,
      body: '{}',
    })
    expect(answer.status).toBe(401)
    expect(JSON.parse(answer.text)).toMatchObject({ ok: false, refusal: { code: 'turned-away' } })
  })

  test('the cookie of a desk on another port is no key', async () => {
    const other = await host()
    const stranger = await comeIn(other)
    const renamed = stranger.replace(`duskline-${other.port}`, `duskline-${desk.port}`)
    for (const Cookie of [stranger, renamed, `duskline-${desk.port}=`, 'duskline'])
      expect((await desk.ask('/', { headers: { Cookie } })).status).toBe(401)
    await other.close()
  })
})

test('a second address in the same browser leaves its first window in', async () => {
  const Cookie = await comeIn(desk)
  const again = await desk.ask(pathOf(desk.newUrl()), { headers: { Cookie } })
  expect(again.headers['set-cookie']?.[0]).toContain(Cookie)
  expect((await desk.ask('/', { headers: { Cookie } })).status).toBe(200)
})
