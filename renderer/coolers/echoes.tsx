import { Badge } from '../parts/badge.tsx'
import type { Echo } from './use-filling.ts'

/** The last scans and what became of each, latest first and largest. The strip reads them out. */
export function Echoes(props: { echoes: readonly Echo[] }) {
  if (props.echoes.length === 0)
    return (
      <p className="echoes-none">Nothing scanned here yet. A scan needs no field and no click.</p>
    )
  return (
    <ol className="echoes" aria-label="Last scans, latest first">
      {props.echoes.map((echo) => (
        <li key={echo.id} className={echo.word === 'not done' ? 'echo echo-refused' : 'echo'}>
          <Badge shape={echo.word === 'not done' ? 'now' : 'fine'}>{echo.word}</Badge>
          <b className="numbers">{echo.text}</b>
          <span>
            {echo.say} {echo.next}
          </span>
        </li>
      ))}
    </ol>
  )
}
