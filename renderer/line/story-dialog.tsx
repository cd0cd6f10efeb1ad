import { animalStateWords, noSampleWords, outcomeWords } from '../../shared-types/animal.ts'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import { checkWords, keptWords, missedWords, siteWords } from '../../shared-types/tissue.ts'
import { useAsk } from '../desk/use-desk.ts'
import { Dialog } from '../parts/dialog.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Time } from '../parts/time.tsx'
import './story-dialog.css'
import { calledNumber, headWords, kindWords } from './words.ts'

type AnimalView = CallOutput<'animal'>

/** One animal's story, read beside the line: what it is, its tissues, and all that was done. */
export function StoryDialog(props: { animal: AnimalNumber; onClose: () => void }) {
  const { data, refusal } = useAsk('animal', { animal: props.animal })
  return (
    <Dialog title={`The story of ${calledNumber(props.animal)}`} onClose={props.onClose} isSide>
      <RefusalNote refusal={refusal} />
      {data && <Story animal={data} />}
    </Dialog>
  )
}

function Story(props: { animal: AnimalView }) {
  const { animal } = props
  return (
    <>
      <Facts animal={animal} />
      <h3>Tissues</h3>
      <ul className="story-sites">
        {animal.sites.map((site) => (
          <li key={site.site}>
            <b>{siteWords[site.site]}</b> {siteStory(site)}{' '}
            {site.bag && <NumberText number={site.bag} />}
          </li>
        ))}
      </ul>
      <h3>What was done</h3>
      <ol className="story">
        {animal.story.map((line) => (
          <li key={`${line.ms} ${line.kind} ${line.say}`}>
            <p>{line.say}</p>
            <p className="field-hint">
              <Time ms={line.ms} />, {line.by}
            </p>
          </li>
        ))}
      </ol>
    </>
  )
}

function siteStory(site: AnimalView['sites'][number]): string {
  if (site.missed) return `not taken: ${missedWords[site.missed.reason]} ${site.missed.words}`
  if (site.bag) return `${keptWords[site.kept]}, bag sealed`
  return site.check ? `seen: ${checkWords[site.check]}` : 'not looked at yet'
}

function Facts(props: { animal: AnimalView }) {
  const { facts, state, outcome, noSample, contact, hasContact } = props.animal
  const standing = [
    animalStateWords[state],
    noSample && noSampleWords[noSample],
    outcome && outcomeWords[outcome],
  ]
  return (
    <dl className="story-facts">
      <Fact words="Number">
        <NumberText number={props.animal.animal} />
      </Fact>
      <Fact words="Stands">{standing.filter(Boolean).join(', ')}</Fact>
      <Fact words="Animal">{kindWords(facts)}</Fact>
      <Fact words="Head">{headWords(facts) || 'whole carcass'}</Fact>
      <Fact words="Tag">
        <span className="numbers">{facts.tag}</span>
      </Fact>
      <Fact words="Hunter">
        <span className="numbers">{facts.hunter}</span>
      </Fact>
      <Fact words="Harvested">
        <span className="numbers">{facts.harvested}</span>, {placeWords(facts.place)}
      </Fact>
      {contact && (
        <Fact words="Contact">
          {[contact.name, contact.phone, contact.email].filter(Boolean).join(', ')}
        </Fact>
      )}
      {!contact && hasContact && <Fact words="Contact">kept apart; not shown to your role</Fact>}
    </dl>
  )
}

function placeWords(place: AnimalView['facts']['place']): string {
  if (place.by === 'not-known') return 'place not known'
  if (place.by === 'unit') return [`unit ${place.unit}`, place.place].filter(Boolean).join(', ')
  const at = `${place.latitude.toFixed(5)}, ${place.longitude.toFixed(5)}`
  return place.unit === '' ? at : `unit ${place.unit}, ${at}`
}

function Fact(props: { words: string; children: React.ReactNode }) {
  return (
    <div>
      <dt>{props.words}</dt>
      <dd>{props.children}</dd>
    </div>
  )
}
