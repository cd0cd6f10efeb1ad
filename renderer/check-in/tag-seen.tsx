import { useEffect, useState } from 'react'
import { animalStateWords } from '../../shared-types/animal.ts'
import { useAsk } from '../desk/use-desk.ts'
import { NumberText } from '../parts/number-text.tsx'
import { Shape } from '../parts/shape.tsx'
import { Ago, Time } from '../parts/time.tsx'

/** Long enough for the next digit to be typed, short enough to be seen before the next field. */
const pauseMs = 200

function useSettled(text: string): string {
  const [settled, setSettled] = useState(text)
  useEffect(() => {
    const timer = setTimeout(() => setSettled(text), pauseMs)
    return () => clearTimeout(timer)
  }, [text])
  return settled
}

/** Says at once when the tag being typed is on an animal that is already here. */
export function TagSeen(props: { tag: string }) {
  const tag = useSettled(props.tag.trim())
  const { data } = useAsk('tagSeen', { tag }, { enabled: tag !== '' })
  const seen = tag === '' || tag !== props.tag.trim() ? null : data?.seen
  return (
    <div role="alert" className="tag-seen">
      {seen && (
        <p>
          <Shape kind="now" /> <strong>This tag is already here</strong> on{' '}
          <NumberText number={seen.animal} />, hunter {seen.hunter}, checked in{' '}
          <Time ms={seen.arrivedMs} /> (<Ago ms={seen.arrivedMs} /> ago),{' '}
          {animalStateWords[seen.state]}. Read the tag again; if it is the same, ask the lead.
        </p>
      )}
    </div>
  )
}
