import { Badge } from '../parts/badge.tsx'
import type { Echo } from './use-filling.ts'

/** The last scans and what became of each, latest first and largest. The strip reads them out. */
export function Echoes(props: { echoes: readonly Echo[] }) {
  if (props.echoes.length === 0)
    return <p className="coolers-echoes-none">Nothing scanned here yet.</p>
  return (
    <ol className="coolers-echoes" aria-label="Last scans, latest first">
      {props.echoes.map((echo, place) => (
        <li
          key={echo.id}
          className={
            echo.word === 'not done' ? 'coolers-echo coolers-echo-refused' : 'coolers-echo'
          }
        >
          <Badge shape={echo.word === 'not done' ? 'now' : 'fine'}>{echo.word}</Badge>
          <b className="numbers">{echo.text}</b>
          <span>
            {echo.say} {place === 0 && echo.next}
          </span>
        </li>
      ))}
    </ol>
  )
}
