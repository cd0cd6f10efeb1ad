import { varianceWords } from '../../shared-types/close.ts'
import type { CloseItem } from '../../shared-types/views/close.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import { Badge } from '../parts/badge.tsx'

/** A variance with its sign: `+2`, `−3`, `0`, with a true minus. */
export function signed(variance: number): string {
  if (variance === 0) return '0'
  return variance > 0 ? `+${variance}` : `−${Math.abs(variance)}`
}

/** What the count says beside the log: sign, shape and words, never colour alone. */
export function VarianceText(props: { item: CloseItem }) {
  const { counted, expected, variance, explained } = props.item
  if (counted === null || variance === null) return <Badge shape="idle">not counted yet</Badge>
  if (variance === 0) return <Agrees item={props.item} />
  const side = variance < 0 ? 'fewer' : 'more'
  return (
    <span className="close-variance">
      <Badge shape={explained ? 'idle' : 'now'}>
        <b className="numbers close-variance-sign">{signed(variance)}</b>
      </Badge>
      <span>
        {Math.abs(variance)} {side} than the log’s <b className="numbers">{expected}</b>
        {explained
          ? `: ${varianceWords[explained.reason]}${explained.words && `, ${explained.words}`}`
          : ', no reason yet'}
        <Scanned item={props.item} />
      </span>
    </span>
  )
}

/** As many as the log has; of a scanned cooler the bags must be the same too. */
function Agrees({ item }: { item: CloseItem }) {
  const { scanned, explained } = item
  if (!scanned || scanned.missing.length + scanned.extra.length === 0)
    return <Badge shape="fine">agrees with the log</Badge>
  return (
    <span className="close-variance">
      <Badge shape={explained ? 'idle' : 'now'}>other bags</Badge>
      <span>
        As many as the log has, but not the same
        {explained ? `: ${varianceWords[explained.reason]}` : ', no reason yet'}
        <Scanned item={item} />
      </span>
    </span>
  )
}

/** The bags that a scan-count found missing or too many, by their numbers. */
function Scanned({ item: { scanned } }: { item: CloseItem }) {
  if (!scanned) return null
  const named = [
    { words: 'not there', bags: scanned.missing },
    { words: 'there, but not in the log', bags: scanned.extra },
  ].filter(({ bags }) => bags.length > 0)
  return named.map(({ words, bags }) => (
    <span key={words} className="close-bags">
      {words}: <b className="numbers">{bags.map(grouped).join(', ')}</b>
    </span>
  ))
}
