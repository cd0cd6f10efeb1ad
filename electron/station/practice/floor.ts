/** One desk of a made-up day as it stands: who is free, who waits, where kits, bags and labels are. */
import type { AnimalFacts } from '../../../shared-types/animal.ts'
import type { CallInput, CommandName } from '../../../shared-types/desk-api.ts'
import type { LocalDate } from '../../../shared-types/local-date.ts'
import type { Training } from '../../../shared-types/person.ts'
import {
  animalNumber,
  type AnimalNumber,
  type BagNumber,
  type CoolerNumber,
  type DeskId,
  type KitNumber,
  type PersonId,
} from '../../../shared-types/sample-number.ts'
import type { CauseCode } from '../../../shared-types/views/cause.ts'
import { Agenda } from './agenda.ts'
import type { AnimalPlan } from './animals.ts'
import type { CrewPlan } from './crew.ts'
import type { Incident } from './incidents.ts'
import type { Chance } from './random.ts'
import type { PlantedFault, PracticeStep } from './script.ts'
import type { DayShape } from './shapes.ts'

/** The frame in which a day is made up. */
export interface DayFrame {
  readonly desk: DeskId
  readonly zone: string
  /** The day that is opened, and the day on which the animals were taken. */
  readonly date: LocalDate
  readonly startMs: number
  /** Whether this desk's lead reopens the closed day once. */
  readonly reopens: boolean
}

export interface Member {
  readonly plan: CrewPlan
  training: readonly Training[]
  onDuty: boolean
  busy: boolean
  kits: number
  /** Whether kits were ever in their hands: then they are counted at dusk. */
  hadKits: boolean
}

/** An animal with its hunter, from the road to the end. */
export interface Guest {
  readonly animal: AnimalNumber
  readonly arrives: number
  readonly plan: AnimalPlan
  /** What has yet to befall it. */
  readonly ahead: Set<Incident>
  facts: AnimalFacts
  /** How many that came later have gone before it. */
  overtaken: number
  state: 'coming' | 'here' | 'done'
  /** The kit whose labels were printed for it. */
  kit: KitNumber | null
}

/** A sealed bag on the bench of a finished animal. */
export interface BenchBag {
  readonly bag: BagNumber
  readonly kind: BoxKind
  readonly goesWrong: boolean
}

/** Deer and elk go into coolers of their own. */
export type BoxKind = 'Deer' | 'Elk'

export interface Box {
  readonly cooler: CoolerNumber
  readonly name: string
  readonly kind: BoxKind
  /** As the log has them. */
  readonly bags: BagNumber[]
  seal: string | null
}

const minuteMs = 60_000

export class Floor {
  readonly agenda = new Agenda()
  readonly steps: PracticeStep[] = []
  readonly frame: DayFrame
  readonly shape: DayShape
  readonly chance: Chance
  readonly lead: PersonId
  readonly crew: readonly Member[]
  readonly guests: readonly Guest[]

  readonly waiting: Guest[] = []
  readonly bench: BenchBag[] = []
  readonly boxes: Box[] = []
  readonly reserved: KitNumber[] = []
  /** What is still to go wrong unseen, and what has. */
  readonly toPlant: Set<CauseCode>
  readonly faults: PlantedFault[] = []
  kitsNumbered = 0
  kitsInStock = 0
  /** Printed labels that are neither stuck on nor void. */
  unusedLabels = 0
  /** Whether bags are being carried from the bench to the coolers. */
  carrying = false
  /** At dusk the routine of the day stops. */
  dusk = false
  #helped = 0

  constructor(
    frame: DayFrame,
    shape: DayShape,
    chance: Chance,
    crew: readonly CrewPlan[],
    guests: readonly { readonly arrives: number; readonly plan: AnimalPlan }[],
    faults: readonly CauseCode[],
  ) {
    this.toPlant = new Set(faults)
    const [lead] = crew
    if (!lead) throw new Error('a station has a lead')
    this.frame = frame
    this.shape = shape
    this.chance = chance
    this.lead = lead.person
    this.crew = crew.map((plan) => ({
      plan,
      training: plan.training,
      onDuty: false,
      busy: false,
      kits: 0,
      hadKits: false,
    }))
    this.guests = guests.map(({ arrives, plan }, place) => ({
      animal: animalNumber(frame.desk, place + 1),
      arrives,
      plan,
      ahead: new Set(plan.incidents),
      facts: plan.facts,
      overtaken: 0,
      state: 'coming',
      kit: null,
    }))
  }

  /** The wall time of a minute of the day. */
  msAt(minute: number): number {
    return this.frame.startMs + Math.round(minute * minuteMs)
  }

  /** Writes down that a person tells the desk something now. */
  tell<N extends CommandName>(by: PersonId, name: N, input: CallInput<N>): void {
    this.steps.push({ is: 'told', atMs: this.msAt(this.agenda.now), by, name, input })
  }

  /** A volunteer on duty, each in turn; the lead when none is. */
  helper(): PersonId {
    const volunteers = this.crew.filter(({ plan, onDuty }) => plan.role === 'volunteer' && onDuty)
    this.#helped += 1
    return volunteers[this.#helped % volunteers.length]?.plan.person ?? this.lead
  }

  /** How many animals wait and are in nobody's hands. */
  get inLine(): number {
    const here = this.guests.filter(({ state }) => state === 'here').length
    return here - this.crew.filter(({ plan, busy }) => plan.role === 'sampler' && busy).length
  }

  /** Whether it is late in the day, when people get tired. */
  get isLate(): boolean {
    return this.agenda.now > this.shape.lastMinute - 240
  }

  /** Whether everyone who came has been dealt with. */
  get quiet(): boolean {
    return this.guests.every(({ state }) => state === 'done')
  }
}

/** Whether this is still to befall the animal; it befalls it once. */
export function befalls({ ahead }: Guest, incident: Incident): boolean {
  return ahead.delete(incident)
}
