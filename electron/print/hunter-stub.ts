/** The stub that the hunter takes home: which number to ask with, when and where, and the cautions. */
import {
  type AnimalNumber,
  type KitNumber,
  type SampleNumber,
  grouped,
} from '../../shared-types/sample-number.ts'
import { type LabelBatch, labelNotes, stationWords } from './label-run.ts'
import type { LabelFrame } from './label-stock.ts'
import { stripMarks } from './label-strip.ts'
import type { Mark } from './mark.ts'
import { paragraph } from './text-block.ts'

export interface HunterStub extends LabelBatch {
  readonly number: SampleNumber
  /** Copy 1 is the first print; higher copies say REPRINT. */
  readonly copy: number
  /** The number to ask with: the animal's, or the kit's while no animal has it. */
  readonly askWith:
    | { readonly kind: 'animal'; readonly number: AnimalNumber }
    | { readonly kind: 'kit'; readonly number: KitNumber }
  /** When and where to ask for the result, as the station has put it. */
  readonly askAt: string
}

/** After the public advice of cdc.gov/prions/cwd/prevention.html, in short words. */
export const stubCautions = [
  'Wait for the result before eating the meat. Do not eat meat of an animal that tests positive.',
  'Wear gloves. Follow the advice of your wildlife agency and health authorities.',
]

function askWords(kind: HunterStub['askWith']['kind'], number: string): string {
  return `Ask for the result with this one number, of your ${kind}: ${number}.`
}

/** What a station typed, begun and ended as a sentence is. */
function fullSentence(text: string): string {
  const words = text.trim()
  const begun = words.charAt(0).toUpperCase() + words.slice(1)
  return /[.!?]$/.test(begun) ? begun : `${begun}.`
}

/** The marks of each label of the stub's strip; undefined when the stock is too small. */
export function hunterStubMarks(stub: HunterStub, frame: LabelFrame): Mark[][] | undefined {
  const width = frame.width - 2 * frame.margin
  const { kind, number } = stub.askWith
  return stripMarks(
    {
      number: stub.number,
      title: grouped(number),
      word: 'Stub',
      // The stub has a number of its own, for the station: it stands where nobody reads it out.
      caption: `Hunter's stub · ${stationWords(stub)} · ${stub.date} · station's label ${stub.number}`,
      notes: labelNotes(stub.copy, stub),
      rows: [
        paragraph(askWords(kind, grouped(number)), 'bold', frame.type + 1, width),
        paragraph(fullSentence(stub.askAt), 'regular', frame.type, width),
        ...stubCautions.map((caution) => paragraph(caution, 'bold', frame.type, width)),
      ],
    },
    frame,
  )
}
