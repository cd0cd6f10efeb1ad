import type { CountTry } from '../../shared-types/views/close.ts'
import { Time } from '../parts/time.tsx'

/** Who counted and when; the counts before it are kept, latest first. */
export function Tries({ tries }: { tries: readonly CountTry[] }) {
  const [last, ...before] = tries
  if (!last) return null
  return (
    <p className="close-tries">
      {last.by}, <Time ms={last.ms} />
      {before.length > 0 && (
        <>
          {' '}
          · before: <span className="numbers">{before.map(say).join(', ')}</span>
        </>
      )}
    </p>
  )
}

function say({ counted, by }: CountTry): string {
  return `${counted} (${by})`
}
