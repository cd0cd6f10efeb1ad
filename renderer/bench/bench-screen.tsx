import { useState } from 'react'
import type { AnimalNumber, PersonId } from '../../shared-types/sample-number.ts'
import type { AnimalView, BenchView } from '../../shared-types/views/animal.ts'
import type { PersonView } from '../../shared-types/views/people.ts'
import { usePlace } from '../desk/place.ts'
import { useAsk, useWho } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { OpenTissueGuide } from '../tissue-guide/open-guide.tsx'
import { BenchPick } from './bench-pick.tsx'
import { BenchWork } from './bench-work.tsx'
import './bench.css'
import { Finished, type FinishedAnimal } from './finished.tsx'
import { TakeNext } from './take-next.tsx'

/** The bench of one sampler: the animal in hand, step by step, by scanner and keyboard. */
export function BenchScreen() {
  const person = useWho()?.person
  return (
    <div className="bench">
      <h1 className="unseen">Bench</h1>
      {person && <BenchFor key={person.person} person={person} />}
    </div>
  )
}

function BenchFor({ person }: { readonly person: PersonView }) {
  const isOwn = person.role === 'sampler'
  const [picked, setPicked] = useState<PersonId | null>(
    isOwn || person.role === 'lead' ? person.person : null,
  )
  const { data, refusal } = useAsk('bench', { sampler: picked ?? '' }, { enabled: picked !== null })
  return (
    <>
      <header className="bench-head">
        {!isOwn && <BenchPick value={picked} onPick={setPicked} />}
        {data && picked && <KitsInHand kits={data.kitsInHand} />}
        <OpenTissueGuide />
      </header>
      <RefusalNote refusal={refusal} />
      {data && data.sampler === picked && <OneBench key={data.sampler} bench={data} />}
    </>
  )
}

function KitsInHand({ kits }: { readonly kits: number }) {
  return (
    <p className="kits-in-hand">
      <b className="numbers">{kits}</b> {kits === 1 ? 'kit' : 'kits'} in hand{' '}
      {kits === 0 && <Badge shape="now">none left: take some on the kits screen, F6</Badge>}
    </p>
  )
}

function OneBench({ bench }: { readonly bench: BenchView }) {
  const { number } = usePlace()
  const [chosen, setChosen] = useState<AnimalNumber | null>(null)
  const [finished, setFinished] = useState<FinishedAnimal | null>(null)
  const wanted = bench.animals.find((each) => each.animal === (chosen ?? number))
  const animal = wanted ?? bench.animals[0]
  if (finished)
    return (
      <div className="bench-alone">
        <Finished finished={finished} onGoOn={() => setFinished(null)} />
      </div>
    )
  if (!animal)
    return (
      <div className="bench-alone">
        <TakeNext bench={bench} />
      </div>
    )
  return (
    <>
      <div className="bench-pair">
        <BenchWork
          key={animal.animal}
          animal={animal}
          onFinished={(outcome) => setFinished({ animal: animal.animal, outcome })}
        />
      </div>
      <AlsoInHand animals={bench.animals} now={animal} onChoose={setChosen} />
    </>
  )
}

/** Other animals in the same hands, to turn to. */
function AlsoInHand(props: {
  animals: readonly AnimalView[]
  now: AnimalView
  onChoose: (animal: AnimalNumber) => void
}) {
  const others = props.animals.filter((each) => each !== props.now)
  if (others.length === 0) return null
  return (
    <nav className="row also-in-hand" aria-label="Other animals in hand">
      Also in hand:
      {others.map(({ animal }) => (
        <Button key={animal} onPress={() => props.onChoose(animal)}>
          Turn to <NumberText number={animal} />
        </Button>
      ))}
    </nav>
  )
}
