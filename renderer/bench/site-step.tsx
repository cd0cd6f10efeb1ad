import { useState } from 'react'
import type { AnimalView, SiteView } from '../../shared-types/views/animal.ts'
import { Bag } from './bag.tsx'
import { Look, type Verdict } from './look.tsx'
import { Miss } from './miss.tsx'
import { Sealed } from './sealed.tsx'

/** One site, from the look at the cut face to the sealed bag, or to the reason why not. */
export function SiteStep(props: { animal: AnimalView; site: SiteView; onSettled: () => void }) {
  const { animal, site, onSettled } = props
  const [verdict, setVerdict] = useState<Verdict | null>(null)
  const [isMissing, setMissing] = useState(false)
  const [isLooking, setLooking] = useState(site.check === null || site.missed !== null)
  if (site.bag) return <Sealed site={site} bag={site.bag} onDone={onSettled} />
  if (isMissing)
    return (
      <Miss animal={animal} site={site} onMissed={onSettled} onBack={() => setMissing(false)} />
    )
  if (isLooking)
    return (
      <Look
        animal={animal}
        site={site}
        verdict={verdict}
        onVerdict={(answer) => {
          setVerdict(answer)
          setLooking(!answer.good)
        }}
        onMiss={() => setMissing(true)}
      />
    )
  return (
    <Bag
      animal={animal}
      site={site}
      onSealed={onSettled}
      onLookAgain={() => setLooking(true)}
      onMiss={() => setMissing(true)}
    />
  )
}
