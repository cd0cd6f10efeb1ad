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
  /** When and where to ask for the result, one sentence. */
  readonly askAt: string
}

/** After the public advice of cdc.gov/prions/cwd/prevention.html, in short words. */
export const stubCautions = [
  'Wait for the result before eating the meat. Do not eat meat of an animal that tests positive.',
  'Wear gloves. Follow the advice of your wildlife agency and health authorities.',
]

/** The marks of each label of the stub's strip; undefined when the stock is too small. */
export function hunterStubMarks(stub: HunterStub, frame: LabelFrame): Mark[][] | undefined {
  const width = frame.width - 2 * frame.margin
  const { kind, number } = stub.askWith
  const ask = `${kind === 'animal' ? 'Animal' : 'Kit'} ${grouped(number)}`
  return stripMarks(
    {
      number: stub.number,
      word: 'Stub',
      caption: `Hunter's stub · ${stationWords(stub)} · ${stub.date}`,
      notes: labelNotes(stub.copy, stub),
      rows: [
        paragraph(ask, 'bold', frame.type + 1, width),
        paragraph(stub.askAt, 'regular', frame.type, width),
        ...stubCautions.map((caution) => paragraph(caution, 'bold', frame.type, width)),
      ],
    },
    frame,
  )
}
