/** The desk over HTTP on this computer: commands by POST, news by server-sent events. */
import { z } from 'zod'
import { anyTopic, deskNotAnswering } from '../../shared-types/bridge.ts'
import type { Connection } from './connect.ts'
import { createListeners } from './listeners.ts'

const Topics = z.array(z.string())

/** How long the page waits before it tries a broken line again. */
const retryMs = 1000

/**
 * Connects this page over HTTP.
 * The window's name lives in this page's memory alone: kept in the browser's storage it would be
 * copied into a duplicated tab, and a change of person in one would change it in the other.
 */
export function connectHttp(): Connection {
  const window = crypto.randomUUID()
  const news = createListeners<string[]>()
  const reach = createReach()
  listen(`/changes?window=${window}`, news.tell, reach.set)
  return {
    call: (name, input) =>
      post(`/call/${encodeURIComponent(name)}?window=${window}`, input, reach.set),
    watch: news.add,
    onReach: reach.on,
  }
}

async function post(
  url: string,
  input: unknown,
  setReach: (reachable: boolean) => void,
): Promise<unknown> {
  try {
    const headers = { 'Content-Type': 'application/json' }
    const answer = await fetch(url, {
      method: 'POST',
      headers,
      body: JSON.stringify(input ?? null),
    })
    const result: unknown = await answer.json()
    setReach(true)
    return result
  } catch {
    setReach(false)
    return { ok: false, refusal: deskNotAnswering }
  }
}

/**
 * Keeps the news coming. The browser gives up by itself when an answer is not 200, so each break is
 * mended here, and after each (re)connection everything counts as changed: news may have been missed.
 */
function listen(
  url: string,
  tell: (topics: string[]) => void,
  setReach: (reachable: boolean) => void,
): void {
  const source = new EventSource(url)
  source.onopen = () => {
    setReach(true)
    tell([anyTopic])
  }
  source.onmessage = (event) => tell(Topics.parse(JSON.parse(event.data)))
  source.onerror = () => {
    source.close()
    setReach(false)
    setTimeout(() => listen(url, tell, setReach), retryMs)
  }
}

/** Remembers whether the desk answers; taken to be there until it is known not to be. */
function createReach() {
  const listeners = createListeners<boolean>()
  let reachable = true
  return {
    set: (now: boolean) => {
      if (now === reachable) return
      reachable = now
      listeners.tell(now)
    },
    on: (listener: (reachable: boolean) => void) => {
      listener(reachable)
      return listeners.add(listener)
    },
  }
}
