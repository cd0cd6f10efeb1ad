import { useState } from 'react'
import {
  type SampleNumber,
  grouped,
  kitOf,
  numberParts,
  partWords,
} from '../../shared-types/sample-number.ts'
import type { NumberedKit } from '../../shared-types/views/kits.ts'
import { sentence } from '../bench/sentence.ts'
import { useMay } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { Time } from '../parts/time.tsx'
import { orderLabel } from './label-order.ts'
import { ReprintDialog } from './reprint-dialog.tsx'
import { SpoilDialog } from './spoil-dialog.tsx'
import { VoidDialog } from './void-dialog.tsx'
import { fateShapes, fateWords } from './words.ts'

type LabelView = NumberedKit['labels'][number]

type Deed =
  | { readonly is: 'reprint' | 'void'; readonly number: SampleNumber }
  | { readonly is: 'spoil' }

/** One kit and the fate of each of its labels. `kit` is undefined for one too old to be listed. */
export function KitDialog(props: {
  number: SampleNumber
  kit: NumberedKit | undefined
  onClose: () => void
}) {
  const { number, kit } = props
  const [deed, setDeed] = useState<Deed | null>(null)
  const back = () => setDeed(null)
  return (
    <Dialog title={`Kit ${grouped(kitOf(number))}`} onClose={props.onClose} isSide>
      {kit && <KitFacts kit={kit} />}
      <ul className="kit-labels">
        {kit ? (
          latestCopies(kit.labels).map((label) => (
            <li key={label.number}>
              <LabelLine number={label.number} label={label} onDeed={setDeed} />
            </li>
          ))
        ) : (
          <li>
            <LabelLine number={number} label={undefined} onDeed={setDeed} />
          </li>
        )}
      </ul>
      <SpoilButton onPress={() => setDeed({ is: 'spoil' })} />
      {deed?.is === 'reprint' && <ReprintDialog number={deed.number} onClose={back} />}
      {deed?.is === 'void' && <VoidDialog number={deed.number} onClose={back} />}
      {deed?.is === 'spoil' && <SpoilDialog kit={kitOf(number)} onClose={back} />}
    </Dialog>
  )
}

/** The latest copy of each number; the ones before it are void. */
function latestCopies(labels: readonly LabelView[]): LabelView[] {
  const latest = new Map<SampleNumber, LabelView>()
  for (const label of labels)
    if (label.copy > (latest.get(label.number)?.copy ?? 0)) latest.set(label.number, label)
  return [...latest.values()].toSorted(orderLabel)
}

function KitFacts({ kit }: { readonly kit: NumberedKit }) {
  return (
    <p>
      {sentence(kit.state)},{' '}
      {kit.animal ? (
        <>
          for animal <NumberText number={kit.animal} />
        </>
      ) : (
        'for whoever comes'
      )}
      . Labels made <Time ms={kit.printedMs} />.
    </p>
  )
}

function LabelLine(props: {
  number: SampleNumber
  label: LabelView | undefined
  onDeed: (deed: Deed) => void
}) {
  const { number, label, onDeed } = props
  const name = partWords[numberParts(number).part]
  const may = useMay('label.reprint')
  return (
    <div className="kit-label">
      <div>
        <p>
          <strong>{name}</strong>
        </p>
        <NumberText number={number} />
        {label && label.copy > 1 && `, copy ${label.copy}`}
        {label && (
          <p>
            <Badge shape={fateShapes[label.fate]}>{fateWords[label.fate]}</Badge>
          </p>
        )}
      </div>
      <div className="row">
        <Button
          label={`Reprint the ${name} label`}
          isDisabled={!may}
          why="the crew prints labels"
          onPress={() => onDeed({ is: 'reprint', number })}
        >
          Reprint
        </Button>
        <Button
          label={`Void the ${name} label`}
          isDisabled={!may}
          why="the crew prints labels"
          onPress={() => onDeed({ is: 'void', number })}
        >
          Void
        </Button>
      </div>
    </div>
  )
}

function SpoilButton(props: { onPress: () => void }) {
  const may = useMay('kit.spoil')
  return (
    <div className="row">
      <Button
        kind="danger"
        keyHint="S"
        isDisabled={!may}
        why="the crew records spoiled kits"
        onPress={props.onPress}
      >
        The kit is spoiled
      </Button>
    </div>
  )
}
