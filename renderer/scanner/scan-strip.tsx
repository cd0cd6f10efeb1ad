import { HelpLink } from '../help/help-link.tsx'
import { Shape } from '../parts/shape.tsx'
import './scan-strip.css'
import { useStripWord } from './strip.ts'

/** The strip that says what the last scan or action did; read out by screen readers. */
export function ScanStrip() {
  const word = useStripWord()
  return (
    <div className={`scan-strip scan-strip-${word?.kind ?? 'quiet'}`}>
      <p role="status">
        {word?.kind === 'done' && (
          <span key={word.id}>
            <Shape kind="fine" /> <strong>Done.</strong> {word.say}
          </span>
        )}
        {word?.kind === 'note' && (
          <span key={word.id}>
            <Shape kind="soon" /> <strong>Still to do.</strong> {word.say}
          </span>
        )}
      </p>
      <p role="alert">
        {word !== undefined && word.kind !== 'done' && word.kind !== 'note' && (
          <span key={word.id} data-refusal={word.code}>
            <Shape kind="now" />{' '}
            <strong>{word.kind === 'wrong-label' ? 'Wrong label.' : 'Not done.'}</strong> {word.say}{' '}
            {word.next} <HelpLink code={word.code} />
          </span>
        )}
      </p>
      {word === undefined && <p className="scan-strip-idle">Ready to scan.</p>}
    </div>
  )
}
