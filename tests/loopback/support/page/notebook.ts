/** A page that does with its bridge what a screen does: shows, asks, and asks again at each change. */
import { connect } from '../../../../renderer/bridge/connect.ts'
import type { Result } from '../../../../shared-types/result.ts'

declare global {
  interface Window {
    ask: (name: string, input: unknown) => Promise<unknown>
    showPdf: (base64: string) => void
  }
}

const desk = connect()
const at = (id: string) => document.querySelector(`#${id}`) as HTMLElement

async function ask(name: string, input: unknown): Promise<unknown> {
  const result = (await desk.call(name, input)) as Result<unknown>
  at('refusal').textContent = result.ok ? '' : `${result.refusal.say} ${result.refusal.next}`
  return result.ok ? result.value : undefined
}

async function show(): Promise<void> {
  at('who').textContent = String(await ask('who', {}))
  const notes = (await ask('notes', {})) as string[] | undefined
  at('notes').replaceChildren(...(notes ?? []).map((note) => new Option(note)))
}

window.ask = ask
window.showPdf = (base64) => {
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
  const url = URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' }))
  ;(at('document') as HTMLIFrameElement).src = url
}
desk.watch(() => void show())
desk.onReach((reachable) => {
  at('reach').textContent = reachable ? 'answers' : 'does not answer'
})
void show()
