import { fill } from '../../shared-types/fill.ts'
import { siteWords } from '../../shared-types/tissue.ts'
import type { LivePracticeView } from '../../shared-types/views/practice.ts'
import { CutFace } from '../bench/cut-face.tsx'
import { Button } from '../parts/button.tsx'
import { deliverScan } from '../scanner/scans.ts'
import { practiceWords as words } from './words.ts'

/** What the learner would see and hear at a real station: the hunter, the tissue, the table. */
export function LiveScene({ live }: { live: LivePracticeView }) {
  if (live.role === 'lead' && live.told.length === 0) return null
  return (
    <div className="practice-scene">
      {live.role === 'check-in' && <Window at={live.atWindow} />}
      {live.role === 'bench' && <Bench live={live} />}
      {live.told.length > 0 && (
        <p className="practice-told" role="status">
          <strong>{words.told}</strong> {live.told.join(' ')}
        </p>
      )}
    </div>
  )
}

function Window({ at }: { at: LivePracticeView['atWindow'] }) {
  if (at === null) return <p className="practice-quiet">{words.windowEmpty}</p>
  return (
    <div className="practice-window">
      <p>
        <strong className="numbers">{fill(words.window, at)}</strong>
        {at.waiting > 1 && fill(words.windowMore, { more: at.waiting - 1 })}
      </p>
      <p className="practice-says">{at.says.join(' ')}</p>
    </div>
  )
}

/** Labels on the table are scanned at a key: the learner has no scanner, and may take the wrong one. */
function Bench({ live }: { live: LivePracticeView }) {
  const { underKnife, onTable } = live
  if (underKnife === null) return <p className="practice-quiet">{words.knifeEmpty}</p>
  return (
    <div className="practice-bench">
      {underKnife.looks && <CutFace check={underKnife.looks} />}
      <p>
        <strong>{fill(words.knife, { site: siteWords[underKnife.site] })}</strong>{' '}
        {underKnife.feels}
      </p>
      <div className="row">
        {onTable.map((label, place) => (
          <Button
            key={label.number}
            keyHint={`Alt+${place + 7}`}
            onPress={() => deliverScan(label.number)}
          >
            {fill(words.scan, label)}
          </Button>
        ))}
      </div>
    </div>
  )
}
