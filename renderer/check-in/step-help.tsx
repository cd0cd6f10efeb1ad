import type { AgeClass } from '../../shared-types/animal.ts'
import type { LocationNeed } from '../../shared-types/station.ts'
import { Caution } from '../parts/caution.tsx'
import { KeyCap } from '../parts/key-cap.tsx'
import type { Step } from './draft.ts'
import { JawAid } from './jaw-aid.tsx'

type Topic = 'keys' | 'age' | 'head' | 'place' | 'consent' | 'contact'

const topics: Partial<Record<Step, Topic>> = {
  age: 'age',
  presented: 'head',
  faults: 'head',
  by: 'place',
  unit: 'place',
  place: 'place',
  latitude: 'place',
  longitude: 'place',
  programme: 'place',
  consent: 'consent',
  name: 'contact',
  phone: 'contact',
  email: 'contact',
}

const heads: Record<Topic, string> = {
  keys: 'Keys',
  age: 'Age by the jaw',
  head: 'The head',
  place: 'Where it was taken',
  consent: 'Ask the hunter',
  contact: 'Why kept apart',
}

/** What helps with the question at hand. */
export function StepHelp(props: {
  step: Step | undefined
  age: AgeClass | null
  locationNeed: LocationNeed
}) {
  const topic = (props.step && topics[props.step]) ?? 'keys'
  return (
    <section className="step-help" aria-labelledby="step-help-head">
      <h2 id="step-help-head">{heads[topic]}</h2>
      {topic === 'keys' && <Keys />}
      {topic === 'age' && <JawAid chosen={props.age} />}
      {topic === 'head' && <HeadHelp />}
      {topic === 'place' && <PlaceHelp need={props.locationNeed} />}
      {topic === 'consent' && <ConsentHelp />}
      {topic === 'contact' && <ContactHelp />}
    </section>
  )
}

function Keys() {
  return (
    <ul className="key-list">
      <li>
        <KeyCap>Enter</KeyCap> moves on
      </li>
      <li>
        <KeyCap>1</KeyCap> <KeyCap>M</KeyCap> the key on a tile chooses it
      </li>
      <li>
        <KeyCap>Shift+Tab</KeyCap> goes back
      </li>
      <li>
        <KeyCap>F12</KeyCap> or <KeyCap>Ctrl+Enter</KeyCap> checks in, from anywhere
      </li>
      <li>Scan the licence or the tag into its field.</li>
      <li>Species, unit and date stay from the last animal. Hunter and tag never do.</li>
    </ul>
  )
}

/** Gloves, and little handling of brain and spine: CDC, cdc.gov/prions/cwd/prevention.html. */
function HeadHelp() {
  return (
    <>
      <p>Look before you choose: what is wrong with the head decides who can work on it.</p>
      <Caution title="gloves first">
        <p>
          Wear gloves to touch a carcass or a head, and keep off brain and spine (CDC). Mind antler
          points and broken bone after a shot. Local rules come first.
        </p>
      </Caution>
    </>
  )
}

const needWords: Record<LocationNeed, string> = {
  unit: 'This laboratory asks for the unit.',
  'unit-and-place': 'This laboratory asks for the unit and a place in it.',
  coordinates: 'This laboratory asks for coordinates.',
}

/** Location asked for: Wyoming GFD, wgfd.wyo.gov; no location, not tested: Montana FWP, fwp.mt.gov. */
function PlaceHelp(props: { need: LocationNeed }) {
  return (
    <>
      <p>{needWords[props.need]}</p>
      <p>
        Where it fell, not where the truck stood. Words that a map reader can find: a road number, a
        creek, a section.
      </p>
      <p className="small-print">
        Programmes ask for area and place, and a sample without a usable place is commonly not
        tested (Wyoming GFD; Montana FWP).
      </p>
    </>
  )
}

function ConsentHelp() {
  return (
    <>
      <p>
        Say what is done: the throat is cut to take two lymph nodes. With “no” the animal is
        recorded and does not join the line.
      </p>
      <p>
        A head for the taxidermist: mark it as skinned, or tell the lead, so that a trained sampler
        takes it.
      </p>
      <p className="small-print">
        Where sampling is mandatory and the hunter says no, record “no” and call the lead: local
        rules decide.
      </p>
    </>
  )
}

function ContactHelp() {
  return (
    <p>
      The log can never be altered, so names and numbers do not go in it. They lie in a table of
      their own; the log holds only a seal of them. After results are told they can be erased, and
      the log still proves itself.
    </p>
  )
}
