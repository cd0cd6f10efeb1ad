/** Opening a practice day: an invented morning is played up to now, and the person goes on from there. */
import { mkdtempSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { granted } from '../../shared-types/result.ts'
import { practiceMorning } from '../station/practice/plan.ts'
import { practicePin } from '../station/practice/station-facts.ts'
import type { ShelfHandlers } from './call.ts'
import { playScript } from './practice/player.ts'

export const practiceCalls = {
  'practice.open': async ({ deps, shelf, session, now, anotherDesk }, { animals, seed }) => {
    const script = practiceMorning({ seed, animals, nowMs: now, zone: deps.zone })
    // Apart from the shelf until it is whole: a morning half played is of no use to anyone.
    const folder = mkdtempSync(join(deps.folder, '.practice-'))
    try {
      const played = await playScript(script, { folder, createDesk: anotherDesk })
      if (!played.ok) return played
      const opened = shelf.adopt(played.value)
      if (!opened.ok) return opened
      session.person = null
      return granted({ pin: practicePin })
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  },
} satisfies Partial<ShelfHandlers>
