/** The draft outlives the screen: a look at the line must not cost the hunter at the window a minute. */
import { useState } from 'react'
import { type Draft, draftAfter, emptyDraft } from './draft.ts'

interface Kept {
  readonly desk: string
  readonly today: string
  readonly draft: Draft
}

let kept: Kept | undefined

/** The draft left at this desk; on a new day the date of harvest starts from that day. */
function draftAt(desk: string, today: string): Draft {
  if (kept?.desk !== desk) return emptyDraft(today)
  return kept.today === today ? kept.draft : { ...kept.draft, harvested: today }
}

export interface DraftHold {
  readonly draft: Draft
  readonly change: (part: Partial<Draft>) => void
  /** The animal is in the log: what repeats stays, the rest is asked anew. */
  readonly begin: () => void
}

/** The draft of this desk, kept while the window lives. */
export function useDraft(desk: string, today: string): DraftHold {
  const [draft, setDraft] = useState(() => draftAt(desk, today))
  function hold(next: Draft) {
    kept = { desk, today, draft: next }
    setDraft(next)
  }
  return {
    draft,
    change: (part) => hold({ ...draft, ...part }),
    begin: () => hold(draftAfter(draft)),
  }
}
