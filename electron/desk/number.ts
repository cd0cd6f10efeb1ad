/** What a scanned number is: one answer, wherever it is scanned. */
import type { ReadableLog } from '../../db/connection.ts'
import { animalOf } from '../../db/read/animals.ts'
import { bagOf } from '../../db/read/bags.ts'
import { coolerOf } from '../../db/read/coolers.ts'
import { handoffOf } from '../../db/read/handoffs.ts'
import { kitRecordOf } from '../../db/read/kits.ts'
import { personOf } from '../../db/read/people.ts'
import { animalStateWords, speciesWords } from '../../shared-types/animal.ts'
import { granted, type Result } from '../../shared-types/result.ts'
import {
  AnimalNumber,
  BagNumber,
  CoolerNumber,
  grouped,
  HandoffNumber,
  kitOf,
  labelInWords,
  type Part,
  PersonId,
  readSampleNumber,
  type SampleNumber,
} from '../../shared-types/sample-number.ts'
import { siteWords } from '../../shared-types/tissue.ts'
import { homeOf } from './find.ts'
import { ofThisStation, partOf } from '../station/scan.ts'
import type { QueryHandlers } from './call.ts'
import { namesOf } from './names.ts'

interface Told {
  readonly say: string
  readonly animal: AnimalNumber | null
  readonly cooler: CoolerNumber | null
}

const nothing = { animal: null, cooler: null }

function unknown(number: SampleNumber): Told {
  return {
    ...nothing,
    say: `This is ${labelInWords(partOf(number))} of this station, and this desk's log does not know it.`,
  }
}

function tellAnimal(log: ReadableLog, number: SampleNumber): Told {
  const animal = animalOf(log, AnimalNumber.parse(number))
  if (!animal) return unknown(number)
  const { species, tag } = animal.facts
  const say = `Animal ${grouped(number)}: ${speciesWords[species]}, tag ${tag}, ${animalStateWords[animal.state]}.`
  return { say, animal: animal.animal, cooler: null }
}

function tellBag(log: ReadableLog, number: SampleNumber): Told {
  const bag = bagOf(log, BagNumber.parse(number))
  if (!bag) return tellKit(log, number)
  const place =
    bag.place === 'cooler' && bag.cooler
      ? `in cooler ${namesOf(log)(bag.cooler)}`
      : bag.place === 'bench'
        ? 'on the bench, in no cooler'
        : bag.place === 'handed-off'
          ? 'with the courier'
          : 'discarded'
  const say = `Bag ${grouped(number)}: ${siteWords[bag.site]} of animal ${grouped(bag.animal)}, ${place}.`
  return { say, animal: bag.animal, cooler: bag.cooler }
}

function tellKit(log: ReadableLog, number: SampleNumber): Told {
  const kit = kitRecordOf(log, kitOf(number))
  if (!kit) return unknown(number)
  const whose = kit.animal ? ` for animal ${grouped(kit.animal)}` : ' for no animal yet'
  const state = kit.state === 'reserved' ? 'printed, not opened' : kit.state
  return {
    say: `Kit ${grouped(kit.kit)}: ${state}${kit.state === 'spoiled' ? '' : whose}.`,
    animal: kit.animal,
    cooler: null,
  }
}

function tellCooler(log: ReadableLog, number: SampleNumber): Told {
  const cooler = coolerOf(log, CoolerNumber.parse(number))
  if (!cooler) return unknown(number)
  const seal = cooler.seal ? `, seal ${cooler.seal}` : ''
  const say = `Cooler ${cooler.name}: ${cooler.state}${seal}.`
  return { say, animal: null, cooler: cooler.cooler }
}

function tellPerson(log: ReadableLog, number: SampleNumber): Told {
  const person = personOf(log, PersonId.parse(number))
  return person ? { ...nothing, say: `Badge of ${person.name}.` } : unknown(number)
}

function tellHandoff(log: ReadableLog, number: SampleNumber): Told {
  const handoff = handoffOf(log, HandoffNumber.parse(number))
  if (!handoff) return unknown(number)
  return {
    ...nothing,
    say: `Handoff ${grouped(number)} to ${handoff.destination}: ${handoff.state}.`,
  }
}

const tell: Record<Part, (log: ReadableLog, number: SampleNumber) => Told> = {
  A: tellAnimal,
  L: tellBag,
  R: tellBag,
  X: tellBag,
  K: tellKit,
  H: tellKit,
  C: tellCooler,
  P: tellPerson,
  M: tellHandoff,
}

/** What a number of this log is, in words. */
export function tellNumber(log: ReadableLog, number: SampleNumber): Told {
  return tell[partOf(number)](log, number)
}

export const numberQueries = {
  number: ({ log }, { text }) => {
    const read = readSampleNumber(text)
    const here: Result<SampleNumber> = read.ok ? ofThisStation(homeOf(log), read.value) : read
    if (!here.ok) return here
    const number = here.value
    const part = partOf(number)
    return granted({ number, part, ...tell[part](log, number) })
  },
} satisfies Partial<QueryHandlers>
