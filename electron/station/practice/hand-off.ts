/** The handoff of a made-up day: called off once, because the courier's vehicle broke down, then done. */
import {
  type CoolerNumber,
  type HandoffNumber,
  handoffNumber,
} from '../../../shared-types/sample-number.ts'
import { PackingStep } from '../../../shared-types/transport.ts'
import type { Process } from './agenda.ts'
import { coldEnough } from './coolers.ts'
import type { Floor } from './floor.ts'
import { practicePin, practiceSettings } from './station-facts.ts'

const courier = {
  name: 'Yorick Saltmarrow',
  organisation: 'Wickerlane Carriers (invented)',
  vehicle: 'white van 7',
}

/** A scrawl, as a hand leaves it on a small screen. */
const scrawl = [
  Array.from({ length: 24 }, (_, place) => ({
    x: Number((0.1 + place * 0.033).toFixed(3)),
    y: Number((0.5 + 0.3 * Math.sin(place * 0.9)).toFixed(3)),
  })),
]

export function* handOff(floor: Floor): Process {
  const coolers = floor.boxes.filter(({ seal }) => seal).map(({ cooler }) => cooler)
  if (coolers.length === 0) return
  yield 30
  const first = begin(floor, coolers, 1)
  yield 5
  const reason = "the courier's vehicle broke down; another one comes"
  floor.tell(floor.lead, 'handoff.callOff', { handoff: first, reason })
  yield 35
  const second = begin(floor, coolers, 2)
  yield* pack(floor, second)
  yield* scanOut(floor, second)
  floor.tell(floor.lead, 'handoff.sign', {
    handoff: second,
    courier,
    pin: practicePin,
    leadSignature: { how: 'drawn', strokes: scrawl },
    courierSignature: { how: 'on-paper' },
  })
}

function begin(floor: Floor, coolers: CoolerNumber[], serial: number): HandoffNumber {
  const destination = practiceSettings.laboratory
  floor.tell(floor.lead, 'handoff.begin', { destination, coolers })
  return handoffNumber(floor.frame.desk, serial)
}

/** How it is classed is the carrier's word; the checklist is gone through beside the open vehicle. */
function* pack(floor: Floor, handoff: HandoffNumber): Process {
  yield 2
  floor.tell(floor.lead, 'handoff.class', {
    handoff,
    transport: 'as-the-carrier-says',
    agreedWith: courier.name,
    citation: "the carrier's own terms (invented)",
  })
  yield 3
  const answers = PackingStep.options.map((step) => ({
    step,
    answer: notPacked.includes(step) ? ('does-not-apply' as const) : ('done' as const),
  }))
  floor.tell(floor.lead, 'handoff.pack', { handoff, answers, dryIceKg: null, words: '' })
}

const notPacked: readonly PackingStep[] = ['dry-ice', 'formalin']

function* scanOut(floor: Floor, handoff: HandoffNumber): Process {
  for (const { cooler, seal, bags } of floor.boxes) {
    if (!seal) continue
    yield 2
    const read = { seal, celsius: coldEnough(floor), counted: bags.length, words: '' }
    floor.tell(floor.helper(), 'cooler.scanOut', { handoff, cooler, ...read })
  }
  yield 2
}
