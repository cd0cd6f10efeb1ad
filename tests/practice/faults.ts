/** What went wrong unseen on a practice day, beside what the close makes of it. */
import { createDesk } from '../../electron/desk/desk.ts'
import { playScript } from '../../electron/desk/practice/player.ts'
import { practiceDay } from '../../electron/station/practice/plan.ts'
import type { DeskScript, PlantedFault } from '../../electron/station/practice/script.ts'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import { value } from './played.ts'

type Close = CallOutput<'close'>

export interface LookedOver {
  readonly script: DeskScript
  readonly close: Close
}

/** Plays a day at one desk, and answers with the close as its lead sees it before settling anything. */
export async function playToClose(
  folder: string,
  wish: { seed: number; animals: number },
): Promise<LookedOver> {
  const [script] = practiceDay({ ...wish, desks: 1 })
  if (!script) throw new Error('no desk was made up')
  let close: Close | undefined
  const looked = (view: Close) => {
    close = view
  }
  value(await playScript(script, { folder, createDesk, looked }))
  if (!close) throw new Error('nobody looked over the close')
  return { script, close }
}

const named = ({ code, about }: { code: string; about: string }) => `${code} ${about}`

/** What was planted, each in a line. */
export function planted({ faults }: { faults: readonly PlantedFault[] }): string[] {
  return faults.map(named).toSorted()
}

/** What the close names first for each thing that differs or was left in between, each once. */
export function found({ items, between }: Close): string[] {
  const first = items.flatMap(({ causes, variance, words }) =>
    causes[0] ? [named(causes[0])] : variance ? [`unexplained ${words} ${variance}`] : [],
  )
  return [...new Set([...first, ...between.map(named)])].toSorted()
}

/** How far each count is off by what was planted, by item key; those that cancel out are left out. */
export function offByPlanted({
  faults,
}: {
  faults: readonly PlantedFault[]
}): Record<string, number> {
  const off: Record<string, number> = {}
  for (const fault of faults)
    for (const [key, count] of Object.entries(fault.off)) off[key] = (off[key] ?? 0) + count
  return Object.fromEntries(Object.entries(off).filter(([, count]) => count !== 0))
}

export function offByCount({ items }: Close): Record<string, number> {
  return Object.fromEntries(
    items.flatMap(({ key, variance }) => (variance ? [[key, variance] as const] : [])),
  )
}
