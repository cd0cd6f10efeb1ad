/** Letters that tell hunters their results: one page each, in words that defer to agency and doctors. */
import { type AnimalNumber, grouped } from '../../shared-types/sample-number.ts'
import { type Block, gap, type Section, stacked } from './flow.ts'
import { boxMark, type Page, shifted } from './mark.ts'
import { innerWidth, type PaperName, paperPages } from './paper.ts'
import { writePdf } from './pdf-writer.ts'
import { paragraph } from './text-block.ts'

export interface ResultLetter {
  readonly animal: AnimalNumber
  /** Empty where no contact is kept: then the letter is addressed to the hunter's own number. */
  readonly name: string
  readonly hunter: string
  readonly species: string
  /** Days as the station writes them. */
  readonly harvested: string
  readonly unit: string
  /** The result in one sentence. */
  readonly say: string
  readonly because: string
  /** What to do, most urgent first. */
  readonly next: readonly string[]
  /** One line a sample: side, result, test, day. */
  readonly samples: readonly string[]
}

export interface LetterRun {
  readonly station: string
  readonly practice: boolean
  readonly date: string
  readonly letters: readonly ResultLetter[]
  readonly madeAtMs: number
}

const type = 11

function boxed(block: Block, width: number): Block {
  const height = block.height + 14
  return {
    height: height + 2,
    marks: [boxMark(0.5, 0.5, width - 1, height, 1), ...shifted(block.marks, 8, 7)],
  }
}

function letterSections(letter: ResultLetter, run: LetterRun, width: number): Section[] {
  const to = letter.name === '' ? `To the hunter ${letter.hunter}` : letter.name
  const inner = width - 16
  const about = `${letter.species}, taken ${letter.harvested}${letter.unit === '' ? '' : ` in unit ${letter.unit}`}`
  const words = (text: string, face: 'regular' | 'bold' = 'regular', size = type) =>
    paragraph(text, face, size, width)
  const result = stacked([
    paragraph(letter.say, 'bold', 14, inner),
    gap(4),
    paragraph(letter.because, 'regular', type, inner),
  ])
  const rows = [
    words(run.practice ? `${run.station} · PRACTICE, not a real result` : run.station, 'bold', 12),
    words(run.date),
    gap(30),
    words(to, 'bold'),
    gap(24),
    words(`Result for animal ${grouped(letter.animal)}`, 'bold', 18),
    words(about),
    gap(14),
    boxed(result, width),
    gap(14),
    ...letter.next.flatMap((line) => [words(line, 'bold'), gap(6)]),
    gap(10),
    words('Samples', 'bold'),
    ...letter.samples.map((line) => words(line)),
    gap(14),
    words(
      'Results are given by animal number. If this number is not the one on your stub, tell the agency at once.',
    ),
  ]
  return [{ rows }]
}

/** One letter after the other, each on a page of its own. */
export function printResultLetters(run: LetterRun, paper: PaperName): Promise<Uint8Array> {
  const width = innerWidth(paper)
  const title = run.practice ? 'PRACTICE · results' : 'Results'
  const pages: Page[] = run.letters.flatMap((letter) =>
    paperPages(paper, letterSections(letter, run, width), () => grouped(letter.animal)),
  )
  return writePdf(pages, {
    title: `${title} · ${run.station} · ${run.date}`,
    madeAtMs: run.madeAtMs,
  })
}
