import { type ClientRequest, type IncomingMessage, request } from 'node:http'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { mostWindows } from '../../electron/loopback/windows.ts'
import { eventually } from './support/eventually.ts'
import { comeIn, type Hosted, host, ownPage } from './support/hosted.ts'

interface News {
  readonly status: number
  readonly text: () => string
  readonly close: () => void
}

const onLastClosed = vi.fn()
let desk: Hosted
let cookie: string
let open: ClientRequest[]

beforeEach(async () => {
  onLastClosed.mockClear()
  open = []
  desk = await host({ onLastClosed, graceMs: 500 })
  cookie = await comeIn(desk)
})
afterEach(async () => {
  for (const window of open) window.destroy()
  await desk.close()
})

/** Opens a window's news, as its page does first of all. */
async function openWindow(id: string): Promise<News> {
  const path = `/changes?window=${id}`
  const sent = request({ host: '127.0.0.1', port: desk.port, path, headers: { Cookie: cookie } })
  open.push(sent)
  const response = await new Promise<IncomingMessage>((resolve, reject) => {
    sent.once('response', resolve).once('error', reject).end()
  })
  let text = ''
  response.on('data', (chunk: Buffer) => {
    text += chunk.toString()
  })
  response.on('error', () => {})
  return {
    status: response.statusCode ?? 0,
    text: () => text,
    close: () => sent.destroy(),
  }
}

async function ask(window: string, name: string, input: unknown = {}): Promise<unknown> {
  const body = JSON.stringify(input)
  const path = `/call/${name}?window=${window}`
  const answer = await desk.ask(path, { method: 'POST', headers: ownPage(desk, cookie), body })
  return JSON.parse(answer.text)
}

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

describe('two windows', () => {
  test('see each other’s change at once', async () => {
    const [left, right] = [await openWindow('left-window'), await openWindow('right-window')]
    await ask('left-window', 'note.add', 'a doe at the gate')
    await eventually(left.text).toBe('data: ["notes"]\n\n')
    await eventually(right.text).toBe('data: ["notes"]\n\n')
  })

  test('of one browser have each a person of their own', async () => {
    await ask('left-window', 'person.signIn', 'Ada')
    await ask('right-window', 'person.signIn', 'Ben')
    expect(await ask('left-window', 'who')).toEqual({ ok: true, value: 'Ada' })
    expect(await ask('right-window', 'who')).toEqual({ ok: true, value: 'Ben' })
  })

  test('of two browsers are two, though their pages gave them the same name', async () => {
    await ask('same-window', 'person.signIn', 'Ada')
    cookie = await comeIn(desk)
    expect(await ask('same-window', 'who')).toEqual({ ok: true, value: 'nobody' })
  })
})

describe('a window', () => {
  test('that closes ends its session after a while', async () => {
    const window = await openWindow('left-window')
    await ask('left-window', 'person.signIn', 'Ada')
    window.close()
    await eventually(() => desk.desk.sessions.size).toBe(0)
    expect(await ask('left-window', 'who')).toEqual({ ok: true, value: 'nobody' })
  })

  test('whose line broke and came back keeps its person', async () => {
    const window = await openWindow('left-window')
    await ask('left-window', 'person.signIn', 'Ada')
    window.close()
    await pause(100)
    await openWindow('left-window')
    await pause(900)
    expect(await ask('left-window', 'who')).toEqual({ ok: true, value: 'Ada' })
  })

  test('that asks but never listens does not keep its session for ever', async () => {
    await ask('left-window', 'who')
    expect(desk.windows()).toBe(1)
    await eventually(() => desk.windows()).toBe(0)
    expect(desk.desk.sessions.size).toBe(0)
  })

  test('too many is told so, while the others go on', async () => {
    for (let n = 1; n <= mostWindows; n++)
      expect((await openWindow(`window-${n}`)).status).toBe(200)
    expect((await openWindow('window-too-many')).status).toBe(503)
    expect(await ask('window-too-many', 'who')).toMatchObject({
      refusal: { code: 'too-many-windows' },
    })
    expect(await ask('window-1', 'who')).toMatchObject({ ok: true })
  })
})

describe('the last window', () => {
  test('tells by closing that the desk may stop', async () => {
    const [left, right] = [await openWindow('left-window'), await openWindow('right-window')]
    left.close()
    await pause(900)
    expect(onLastClosed).not.toHaveBeenCalled()
    right.close()
    await eventually(() => onLastClosed).toHaveBeenCalledOnce()
  })

  test('that is reloaded does not stop the desk', async () => {
    const before = await openWindow('before-reload')
    before.close()
    await openWindow('after-reload')
    await pause(900)
    expect(onLastClosed).not.toHaveBeenCalled()
  })
})

test('closing the host ends every window’s news and session, without waiting for them', async () => {
  await openWindow('left-window')
  await ask('right-window', 'who')
  await desk.close()
  expect(desk.desk.sessions.size).toBe(0)
  await expect(desk.ask('/')).rejects.toThrow(/ECONNREFUSED|ECONNRESET|hang up/)
})
