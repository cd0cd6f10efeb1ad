import { useEffect, useState } from 'react'
import { fill } from '../../shared-types/fill.ts'
import { tourSteps, tourWords as words } from '../../shared-types/help/tour.ts'
import { nothing, useAsk, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import './help.css'

/** The first round, once on each laptop: a strip over the screen, which goes on working beneath. */
export function Tour() {
  const isTaken = useAsk('tour', nothing).data?.taken ?? true
  return isTaken ? null : <Steps />
}

function Steps() {
  const [place, setPlace] = useState(0)
  const { tell } = useTell('tour.take')
  const step = tourSteps[place] ?? tourSteps[0]
  const isLast = place === tourSteps.length - 1
  useMarked(step.at)
  const end = () => void tell({})
  return (
    <section className="tour" aria-label={words.title}>
      <div role="status" className="tour-say">
        <p className="tour-place">
          {fill(words.place, { step: place + 1, steps: tourSteps.length })}
          <span aria-hidden="true" className="tour-dots">
            {tourSteps.map(({ at }, each) => (
              <i key={at} className={each === place ? 'tour-dot tour-here' : 'tour-dot'} />
            ))}
          </span>
        </p>
        <p>
          <strong>{step.title}.</strong> {step.say}
        </p>
      </div>
      <div className="row tour-keys">
        {place > 0 && (
          <Button keyHint="Alt+Z" onPress={() => setPlace(place - 1)}>
            {words.back}
          </Button>
        )}
        <Button kind="main" keyHint="Alt+H" onPress={isLast ? end : () => setPlace(place + 1)}>
          {isLast ? words.last : words.next}
        </Button>
        {!isLast && (
          <Button keyHint="Alt+Q" onPress={end}>
            {words.skip}
          </Button>
        )}
      </div>
    </section>
  )
}

/** Draws a frame around the part that the step is about. */
function useMarked(at: string): void {
  useEffect(() => {
    const part = document.querySelector(`[data-tour="${at}"]`)
    part?.classList.add('tour-marked')
    return () => part?.classList.remove('tour-marked')
  }, [at])
}
