import { useState } from 'react'
import type { Outcome } from '../../shared-types/animal.ts'
import type { TissueSite } from '../../shared-types/tissue.ts'
import type { AnimalView } from '../../shared-types/views/animal.ts'
import { AnimalCard } from './animal-card.tsx'
import { Finish } from './finish.tsx'
import { OpenKit } from './open-kit.tsx'
import { Sides } from './sides.tsx'
import { SiteList } from './site-list.tsx'
import { SiteStep } from './site-step.tsx'
import { Stopped } from './stopped.tsx'
import { stageOf } from './work.ts'

/** One animal being worked: what it is and how it stands at the left, the one thing to do at the right. */
export function BenchWork(props: { animal: AnimalView; onFinished: (outcome: Outcome) => void }) {
  const { animal } = props
  const [chosen, setChosen] = useState<TissueSite | null>(null)
  const stage = stageOf(animal, chosen)
  const now = stage.is === 'site' ? stage.site.site : null
  return (
    <>
      <div className="bench-animal">
        <AnimalCard animal={animal} />
        <SiteList animal={animal} now={now} onGo={setChosen} />
        <Sides />
      </div>
      {stage.is === 'kit' && <OpenKit animal={animal} />}
      {stage.is === 'site' && (
        <SiteStep
          key={stage.site.site}
          animal={animal}
          site={stage.site}
          onSettled={() => setChosen(null)}
        />
      )}
      {stage.is === 'stopped' && <Stopped animal={animal} />}
      {stage.is === 'finish' && <Finish animal={animal} onFinished={props.onFinished} />}
    </>
  )
}
