/**
 * The data card of a kit: what the laboratory must know about the animal. What is already known is
 * printed; the rest is a ruled line or boxes to tick with a ball-point pen, in the same place.
 */
import { type AnimalNumber, type KitNumber, grouped } from '../../shared-types/sample-number.ts'
import { type Block, beside, stacked } from './flow.ts'
import { type LabelBatch, labelNotes, stationWords } from './label-run.ts'
import type { LabelFrame } from './label-stock.ts'
import { stripMarks } from './label-strip.ts'
import { type Mark, boxMark, mm, ruleMark, textMark } from './mark.ts'
import { lineHeight, textWidth } from './ruler.ts'
import { paragraph } from './text-block.ts'

/** All in plain words. No name and no telephone number: the tag number leads to the hunter. */
export interface DataCardFacts {
  readonly animal?: AnimalNumber
  readonly tag?: string
  readonly species?: string
  readonly sex?: string
  readonly ageClass?: string
  readonly harvestDate?: string
  /** Harvest unit or coordinates, precise enough for the laboratory. */
  readonly harvestPlace?: string
  readonly headCondition?: string
  readonly kept?: string
  readonly sampler?: string
}

export interface DataCard {
  readonly kit: KitNumber
  /** Copy 1 is the first print; higher copies say REPRINT. */
  readonly copy: number
  /** None of them while the kit is only reserved. */
  readonly facts: DataCardFacts
}

interface Field {
  readonly caption: string
  readonly value: string | undefined
  /** Part of the width of its row. */
  readonly share: number
  /** Boxes to tick where no value is known; a ruled line without. */
  readonly choices?: readonly string[]
}

function fieldRows({ animal, ...facts }: DataCardFacts): Field[][] {
  const sexes = ['M', 'F']
  const ages = ['young', 'yearling', 'adult']
  const ways = ['fresh', 'formalin']
  return [
    [
      { caption: 'Animal number', value: animal && grouped(animal), share: 0.68 },
      { caption: 'Sex', value: facts.sex, share: 0.32, choices: sexes },
    ],
    [
      { caption: 'Tag number', value: facts.tag, share: 0.55 },
      { caption: 'Species', value: facts.species, share: 0.45 },
    ],
    [{ caption: 'Age class', value: facts.ageClass, share: 1, choices: ages }],
    [
      { caption: 'Harvest date', value: facts.harvestDate, share: 0.45 },
      { caption: 'Head condition', value: facts.headCondition, share: 0.55 },
    ],
    [{ caption: 'Harvest unit or coordinates', value: facts.harvestPlace, share: 1 }],
    [
      { caption: 'Kept', value: facts.kept, share: 0.55, choices: ways },
      { caption: 'Sampler', value: facts.sampler, share: 0.45 },
    ],
  ]
}

/** Space to write on one line by hand: a narrow-ruled line is 6.4 mm (common practice, no source). */
const leastRowHeight = mm(6.4)

/** Boxes in a row, on as many lines as the width asks for. */
function tickBoxes(choices: readonly string[], width: number, size: number): Block {
  const side = size * 0.9
  const marks: Mark[] = []
  let [x, y] = [0, 0]
  for (const choice of choices) {
    const across = side + 2 + textWidth(choice, 'regular', size)
    if (x > 0 && x + across > width) [x, y] = [0, y + lineHeight(size)]
    marks.push(boxMark(x, y + (lineHeight(size) - side) / 2, side, side, 0.6))
    marks.push(textMark(x + side + 2, y, choice, 'regular', size))
    x += across + size * 0.7
  }
  return { height: y + lineHeight(size), marks }
}

function fieldBody({ value, choices }: Field, width: number, type: number): Block {
  if (value !== undefined) return paragraph(value, 'regular', type + 1, width)
  return choices ? tickBoxes(choices, width, type) : { height: lineHeight(type + 1), marks: [] }
}

function fieldBlock(field: Field, width: number, type: number): Block {
  const caption = paragraph(field.caption, 'regular', type - 1, width)
  const block = stacked([caption, fieldBody(field, width, type)])
  const height = Math.max(leastRowHeight, block.height + 0.5)
  const ruled = field.value === undefined && !field.choices
  return { height, marks: ruled ? [...block.marks, ruleMark(0, height - 1, width)] : block.marks }
}

function fieldRow(fields: readonly Field[], width: number, type: number): Block {
  let x = 0
  return beside(
    fields.map((field) => {
      const across = field.share * width
      const placed = { x, block: fieldBlock(field, across - 4, type) }
      x += across
      return placed
    }),
  )
}

/** The marks of each label of the card's strip; undefined when the stock is too small. */
export function dataCardMarks(
  { kit, copy, facts }: DataCard,
  batch: LabelBatch,
  frame: LabelFrame,
): Mark[][] | undefined {
  const fields = fieldRows(facts)
  const toFill = fields.flat().some(({ value }) => value === undefined)
  const caption = `Data card · ${stationWords(batch)} · ${batch.date}`
  return stripMarks(
    {
      number: kit,
      title: grouped(kit),
      word: 'Card',
      caption: toFill ? `${caption} · use a ball-point pen` : caption,
      notes: labelNotes(copy, batch),
      rows: fields.map((row) => fieldRow(row, frame.width - 2 * frame.margin, frame.type)),
    },
    frame,
  )
}
