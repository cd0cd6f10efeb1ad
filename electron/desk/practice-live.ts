/** Practising a role: a live morning is set up, the learner sits down at it, and its clock runs. */
import { mkdtempSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { granted } from '../../shared-types/result.ts'
import { liveStage } from '../station/practice/live/stage.ts'
import { practicePin } from '../station/practice/station-facts.ts'
import type { ShelfHandlers } from './call.ts'
import { playScript } from './practice/player.ts'

export const practiceLiveCalls = {
  'practice.live': async (
    { deps, shelf, session, live, anotherDesk },
    { role, speed, animals, seed },
  ) => {
    live.stop()
    const stage = liveStage({ seed, animals, role, nowMs: deps.now(), zone: deps.zone })
    const folder = mkdtempSync(join(deps.folder, '.practice-'))
    try {
      const played = await playScript(stage.script, { folder, createDesk: anotherDesk })
      if (!played.ok) return played
      const opened = shelf.adopt(played.value)
      if (!opened.ok) return opened
      live.begin(stage, opened.value, speed)
      session.person = stage.cast.trainee
      return granted({ pin: practicePin, person: stage.cast.trainee })
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  },
  'practice.pace': ({ live }, { speed }) => live.pace(speed),
  'practice.end': ({ live }) => live.end(),
  practice: ({ live }) => granted({ live: live.view() }),
  'practice.score': ({ live }) => live.score(),
} satisfies Partial<ShelfHandlers>
