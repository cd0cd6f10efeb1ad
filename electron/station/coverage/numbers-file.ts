/** The office's numbers of units out of a table that came as text. */
import { type Species, speciesWords } from '../../../shared-types/animal.ts'
import { UnitNumbers } from '../../../shared-types/coverage.ts'

export interface NumbersFile {
  readonly numbers: UnitNumbers[]
  /** A sentence for each row that was left out. */
  readonly problems: string[]
}

/** Rows by their headings: unit, species, population, harvested, goal; an empty cell is not known. */
export function readNumbers(rows: readonly Readonly<Record<string, string>>[]): NumbersFile {
  const numbers = new Map<string, UnitNumbers>()
  const problems: string[] = []
  for (const [at, row] of rows.entries()) {
    const read = readRow(row)
    const line = `Row ${at + 2}`
    if (typeof read === 'string') problems.push(`${line}: ${read}`)
    else if (numbers.has(keyOf(read)))
      problems.push(`${line}: unit ${read.unit} and its species were there before.`)
    else numbers.set(keyOf(read), read)
  }
  return { numbers: [...numbers.values()], problems }
}

const keyOf = ({ unit, species }: UnitNumbers) => `${unit} ${species}`

const speciesByWord = new Map(
  (Object.entries(speciesWords) as [Species, string][]).flatMap(([species, words]) => [
    [species, species] as const,
    [words, species] as const,
  ]),
)

function readRow(row: Readonly<Record<string, string>>): UnitNumbers | string {
  const species = speciesByWord.get((row.species ?? '').toLowerCase())
  if (!species) return `"${row.species ?? ''}" is no species that is sampled here.`
  const [population, harvested, goal] = [row.population, row.harvested, row.goal].map(wholeIn)
  const read = UnitNumbers.safeParse({ unit: row.unit ?? '', species, population, harvested, goal })
  return read.success
    ? read.data
    : `${String(read.error.issues[0]?.path[0] ?? 'the row')} cannot be "${row[String(read.error.issues[0]?.path[0])] ?? ''}".`
}

/** A whole number as people write it: 1200, 1 200, 1,200; null for nothing, NaN for anything else. */
function wholeIn(text: string | undefined): number | null {
  const cell = (text ?? '').trim()
  if (cell === '') return null
  const grouped = /^\d{1,3}([ ,.'\u00a0\u202f]\d{3})+$/.test(cell)
  const digits = grouped ? cell.replace(/\D/g, '') : cell
  return /^\d+$/.test(digits) ? Number(digits) : Number.NaN
}
