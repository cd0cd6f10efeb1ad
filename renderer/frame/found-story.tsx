import { fill } from '../../shared-types/fill.ts'
import { numberParts, type SampleNumber } from '../../shared-types/sample-number.ts'
import type { StoryOf, StoryView } from '../../shared-types/views/find.ts'
import { go } from '../desk/place.ts'
import { useAsk } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Time } from '../parts/time.tsx'
import './found-story.css'
import { findWords as words } from './find-words.ts'
import { screenWords } from './screens.ts'
import { screenOfPart } from './use-find.ts'

/** The story of anything found: all entries about it, oldest first. */
export function FoundStory(props: { of: StoryOf; onClose: () => void }) {
  const { data, refusal } = useAsk('story', { of: props.of })
  return (
    <Dialog title={data?.title ?? words.story} onClose={props.onClose} isSide>
      <RefusalNote refusal={refusal} />
      {data && (
        <>
          {props.of.is === 'number' && <NumberText number={props.of.number} />}
          <p>{data.say}</p>
          <Places of={props.of} story={data} onClose={props.onClose} />
          <h3>{words.timeline}</h3>
          {data.lines.length === 0 && <p>{words.empty}</p>}
          <ol className="timeline">
            {data.lines.map((line, place) => (
              <li key={`${line.ms} ${place}`}>
                <p>{line.say}</p>
                <p className="field-hint">
                  <Time ms={line.ms} />
                  {line.by && `, ${line.by}`}
                </p>
              </li>
            ))}
          </ol>
        </>
      )}
    </Dialog>
  )
}

/** The screen where it is worked with: of a tag or hunter, that of its first animal. */
function Places(props: { of: StoryOf; story: StoryView; onClose: () => void }) {
  const { of, story } = props
  const number: SampleNumber | undefined = of.is === 'number' ? of.number : story.animals[0]
  if (number === undefined) return null
  const screen = screenOfPart[numberParts(number).part]
  return (
    <div className="row">
      <Button
        keyHint="Alt+G"
        onPress={() => {
          props.onClose()
          go(screen, number)
        }}
      >
        {fill(words.go, { screen: screenWords(screen) })}
      </Button>
    </div>
  )
}
