/** Dusk: what people count, and the way through the close. */
import { countItemKey } from '../../shared-types/close.ts'
import { leadPin, type TestDesk } from './desk.ts'

/** Counts everything as it should be, but for what `off` names by its key. */
export async function countEverything(desk: TestDesk, off: Record<string, number> = {}) {
  const { items } = await desk.ask('close', {})
  // A first guess shows what is expected; the recount is what stands.
  for (const { item } of items) await desk.ask('count.enter', { item, counted: 0 })
  const counted = await desk.ask('close', {})
  for (const { key, item, expected } of counted.items)
    await desk.ask('count.enter', { item, counted: (expected ?? 0) + (off[key] ?? 0) })
}

/** Explains every variance with one reason. */
export async function explainEverything(desk: TestDesk, reason: 'lost' | 'found' = 'lost') {
  const { items } = await desk.ask('close', {})
  for (const { item, variance } of items)
    if (variance) await desk.ask('variance.explain', { item, reason, words: '' })
}

/** Why the lead of these tests signs without a second person. */
export const alone = 'the others have gone home'

/** Closes the day with everything right, but for what `off` names, which is explained as lost. */
export async function closeDay(desk: TestDesk, off: Record<string, number> = {}) {
  await countEverything(desk, off)
  await explainEverything(desk)
  await desk.ask('day.close', { pin: leadPin, aloneBecause: alone })
}

export const handsOf = (person: string) =>
  countItemKey({ of: 'kits-in-hand', person: person as never })
