/**
 * A laboratory's file for practice: results of bags that were sent, as untidy as such files come, with bad
 * rows planted in it. Which ones is told, so that a learner, or a test, can see that all were caught.
 */
import type { ResultWord, RowDoubt } from '../../../shared-types/laboratory-result.ts'
import type { LocalDate } from '../../../shared-types/local-date.ts'
import {
  animalNumber,
  bagNumber,
  type BagNumber,
  type BagPart,
  DeskId,
  grouped,
  lastSerial,
  numberParts,
} from '../../../shared-types/sample-number.ts'
import { Chance } from './random.ts'

/** What this laboratory writes for each result; `QC` is its own control. */
export const laboratorySays: Record<ResultWord, string> = {
  'not-detected': 'Not Detected',
  detected: 'DETECTED',
  presumptive: 'Reactive - confirm',
  unsuitable: 'Unsuitable specimen',
  pending: 'In progress',
}

export interface LaboratoryWish {
  readonly seed: number
  /** The bags that were sent, in the order of the manifests. */
  readonly sent: readonly BagNumber[]
  /** A day before any bag was sealed, and the day of the tests. */
  readonly tooEarly: LocalDate
  readonly tested: LocalDate
}

export interface PlantedRow {
  /** Counted from 1, as a spreadsheet shows it. */
  readonly line: number
  readonly doubt: RowDoubt
  /** The bag that the row was about before it was spoiled; null where it never was about one. */
  readonly bag: BagNumber | null
}

export interface LaboratoryFile {
  /** Semicolons and decimal commas, with three lines above the heading. */
  readonly text: string
  readonly linesAbove: number
  readonly rows: number
  readonly planted: readonly PlantedRow[]
  /** The result of every bag that has an honest row. */
  readonly honest: ReadonlyMap<BagNumber, ResultWord>
}

const heading = ['Accession', 'Sample ID', 'Result', 'Method', 'Date tested', 'OD']

interface Row {
  readonly cells: string[]
  readonly doubt: RowDoubt | null
  readonly bag: BagNumber | null
}

const shares: readonly (readonly [ResultWord, number])[] = [
  ['not-detected', 900],
  ['detected', 25],
  ['presumptive', 15],
  ['pending', 20],
]

/** The same seed and bags, the same file. Nine bags are needed for all that is planted. */
export function laboratoryFile({ seed, sent, tooEarly, tested }: LaboratoryWish): LaboratoryFile {
  const chance = new Chance(seed, 71)
  const spoiled = chance.shuffled(sent).slice(0, 9)
  const planted = plantedRows(spoiled, { tooEarly, tested }, chance)
  const honest = new Map<BagNumber, ResultWord>()
  const good = sent
    .filter((bag) => !spoiled.includes(bag))
    .map((bag): Row => {
      const word = chance.weighted(shares)
      honest.set(bag, word)
      return { cells: cells(grouped(bag), word, tested, chance), doubt: null, bag }
    })
  const control: Row = {
    cells: ['QC', '', 'QC', 'ELISA', american(tested), '1,004'],
    doubt: null,
    bag: null,
  }
  return written(chance.shuffled([...good, ...planted, control]), honest)
}

function written(rows: readonly Row[], honest: ReadonlyMap<BagNumber, ResultWord>): LaboratoryFile {
  const above = ['Basin Animal Disease Laboratory', 'Wildlife report; page 1 of 1', '']
  const lines = [...above, heading.join(';'), ...rows.map((row) => row.cells.join(';'))]
  const planted = rows.flatMap(({ doubt, bag }, place) =>
    doubt === null ? [] : [{ line: above.length + 2 + place, doubt, bag }],
  )
  return {
    text: `${lines.join('\r\n')}\r\n`,
    linesAbove: above.length,
    rows: rows.length,
    planted: firstOfPairs(planted),
    honest,
  }
}

/** Of two rows of one bag that say the same, the first is taken: only the later one is in doubt. */
function firstOfPairs(planted: readonly PlantedRow[]): PlantedRow[] {
  const twice = planted.filter(({ doubt }) => doubt === 'twice')
  return planted.filter((row) => row.doubt !== 'twice' || row === twice.at(-1))
}

function cells(number: string, word: ResultWord, tested: LocalDate, chance: Chance): string[] {
  const density = chance.between(0.04, word === 'detected' ? 3 : 0.2).toFixed(3)
  const accession = `W${String(chance.whole(0, 99_999)).padStart(5, '0')}`
  const said = laboratorySays[word]
  return [accession, number, said, 'ELISA', american(tested), density.replace('.', ',')]
}

/** `11/20/2026`: month first, as an American laboratory writes it. */
function american(day: LocalDate): string {
  const [year, month, date] = day.split('-')
  return `${Number(month)}/${Number(date)}/${year}`
}

function plantedRows(
  spoiled: readonly BagNumber[],
  days: Pick<LaboratoryWish, 'tooEarly' | 'tested'>,
  chance: Chance,
): Row[] {
  const row = (
    doubt: RowDoubt,
    bag: BagNumber | null,
    number: string,
    word: ResultWord = 'not-detected',
    tested: LocalDate = days.tested,
  ): Row => ({ doubt, bag, cells: cells(number, word, tested, chance) })
  const [one, two, three, four, five, six, seven, eight, nine] = spoiled
  const all: Row[] = [{ ...row('number-not-read', null, 'Total'), cells: totals }]
  if (!one || !two || !three || !four || !five || !six || !seven || !eight || !nine) return all
  const { desk, serial } = numberParts(one)
  return [
    ...all,
    row('check-character-wrong', one, misread(one)),
    row('number-damaged', two, '2,6E+11'),
    row('number-damaged', three, noughtsDropped(three)),
    row('not-a-bag', null, grouped(animalNumber(desk, serial))),
    row('wrong-season', null, grouped(lastSeason(desk))),
    row('not-found', null, grouped(bagNumber(desk, lastSerial - 1, 'L'))),
    row('twice', four, grouped(four)),
    row('twice', four, grouped(four)),
    row('contradictory', five, grouped(five)),
    row('contradictory', five, grouped(five), 'detected'),
    row('unsuitable', six, grouped(six), 'unsuitable'),
    saying(row('word-not-known', seven, grouped(seven)), 2, 'see note'),
    saying(row('date-not-read', eight, grouped(eight)), 4, '46339'),
    row('date-impossible', nine, grouped(nine), 'not-detected', days.tooEarly),
  ]
}

const totals = ['', 'Total: 9', '', '', '', '']

function saying(row: Row, at: number, text: string): Row {
  return { ...row, cells: row.cells.map((cell, place) => (place === at ? text : cell)) }
}

/** One character of the number read as another, as a person at a keyboard does. */
function misread(bag: BagNumber): string {
  const last = bag.at(-1) ?? ''
  return `${grouped(bag).slice(0, -1)}${last === 'X' ? 'Y' : 'X'}`
}

/** As a spreadsheet leaves a number whose parts it took for numbers: without the noughts in front. */
function noughtsDropped(bag: BagNumber): string {
  return grouped(bag).replace(/-([A-Z])0+(\d)/, '-$1$2')
}

function lastSeason(desk: DeskId): BagNumber {
  const before = String(Number(desk.slice(0, 2)) - 1).padStart(2, '0')
  return bagNumber(DeskId.parse(before + desk.slice(2)), 17, 'L' satisfies BagPart)
}
