/** The last thing done or refused, said to the person in words and by a sound. */
import { useSyncExternalStore } from 'react'
import type { Refusal } from '../../shared-types/result.ts'
import { playSound } from './sound.ts'
import { isWrongLabel } from './wrong-label.ts'

export interface StripWord {
  /** Counts up, so that the same words said twice are seen and read out twice. */
  readonly id: number
  readonly kind: 'done' | 'note' | 'refused' | 'wrong-label'
  readonly say: string
  readonly next: string
  /** The code of a refusal, by which help finds its page. */
  readonly code: string
}

let word: StripWord | undefined
let saidAt = Number.NEGATIVE_INFINITY
const listeners = new Set<() => void>()

function show(kind: StripWord['kind'], say: string, next = '', code = ''): void {
  saidAt = performance.now()
  word = { id: (word?.id ?? 0) + 1, kind, say, next, code }
  if (kind !== 'note') playSound(kind)
  for (const listener of listeners) listener()
}

/** Says that something was done: one short sentence with the thing's name in it. */
export function sayDone(say: string): void {
  show('done', say)
}

/** Says, without a sound, what is still owed: nothing was done or refused. */
export function sayNote(say: string): void {
  show('note', say)
}

/** Says that a scan or command was refused, and what to do next; a wrong label sounds like nothing else. */
export function sayRefused(refusal: Pick<Refusal, 'say' | 'next'> & Partial<Refusal>): void {
  const kind = isWrongLabel(refusal.code) ? 'wrong-label' : 'refused'
  show(kind, refusal.say, refusal.next, refusal.code)
}

/** A deed may lead to another screen: what it said goes along. */
const goesAlongMs = 1000

/** Another screen: what was said on the one before does not stand there as if it were said here. */
export function clearStrip(): void {
  if (performance.now() - saidAt < goesAlongMs) return
  word = undefined
  for (const listener of listeners) listener()
}

function onWord(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

export function useStripWord(): StripWord | undefined {
  return useSyncExternalStore(onWord, () => word)
}
