import { useState } from 'react'
import { type Species, speciesWords } from '../../shared-types/animal.ts'
import type { CoverageView } from '../../shared-types/views/coverage.ts'
import { nothing, useAsk, useWho } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Empty } from '../parts/empty.tsx'
import { formatDate } from '../parts/zoned-time.ts'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { DaysPicture, TurnaroundPicture } from './time-pictures.tsx'
import { MapPicture } from './map-picture.tsx'
import { RecordOf } from './picture.tsx'
import { TargetPicture } from './target-picture.tsx'

/** The same figures as pictures, of one species at a time. */
export function PicturesView(props: { coverage: CoverageView; onClose: () => void }) {
  const { coverage, onClose } = props
  const times = useAsk('coverage.times', nothing)
  const several = [...new Set(coverage.units.map(({ species }) => species))]
  const [picked, setPicked] = useState<Species>()
  const species = picked ?? several[0]
  const units = coverage.units.filter((herd) => herd.species === species)
  const who = useWho()
  const { station, practice } = coverage
  const day = who === undefined ? '' : formatDate(who.today)
  const record = `${practice ? 'PRACTICE, invented. ' : ''}${station}, ${day}. Hunters’ animals are no random sample.`
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- scrolls, also where a picture fills it
    <div className="coverage-pictures" role="group" aria-label="Pictures of coverage" tabIndex={0}>
      <header className="row">
        <h1>Coverage in pictures</h1>
        <Button keyHint="Esc" autoFocus onPress={onClose}>
          Back to the table
        </Button>
      </header>
      <RecordOf value={record}>
        <RefusalNote refusal={times.refusal} />
        {species === undefined ? (
          <Empty say="There is nothing to draw yet." next="Check animals in first." />
        ) : (
          <>
            <Choice
              label="Species"
              options={several.map((value) => ({ value, label: speciesWords[value] }))}
              value={species}
              onChange={setPicked}
            />
            <TargetPicture units={units} words={speciesWords[species]} />
            <MapPicture outlines={coverage.outlines} units={units} words={speciesWords[species]} />
          </>
        )}
        {times.data && <DaysPicture days={times.data.days} />}
        {times.data && <TurnaroundPicture times={times.data} />}
      </RecordOf>
    </div>
  )
}
