/** Label stocks, printers, and the printing under way. */
import { z } from 'zod'
import { LabelStock, StockName } from '../label-stock.ts'
import { SampleNumber } from '../sample-number.ts'

/** Labels that may come out of printers of their own. */
export const LabelKind = z.enum(['kits', 'coolers', 'badges'])
export type LabelKind = z.infer<typeof LabelKind>

/** How far a printer prints off its place, and by how much that is put right. */
export const PrinterOffset = z.strictObject({
  rightMm: z.number().min(-10).max(10),
  downMm: z.number().min(-10).max(10),
})
export type PrinterOffset = z.infer<typeof PrinterOffset>

export const StockView = z.strictObject({
  name: StockName,
  words: z.string(),
  stock: LabelStock,
  /** How many labels of it one kit takes; null where a label of a kit does not fit. */
  kitLabels: z.int().nullable(),
  /** Why not, in a sentence. */
  tooSmall: z.string().nullable(),
  /** One that the program brings, as it brings it. */
  isCommon: z.boolean(),
})
export type StockView = z.infer<typeof StockView>

/** A length in millimetres from the left and top edge of the label. */
const Mm = z.number()
const Dots = z.strictObject({ x: Mm, y: Mm, width: Mm, height: Mm })
const Point = z.strictObject({ x: Mm, y: Mm })

/** What a label shows, for a screen to draw at its true size. */
export const PreviewMark = z.discriminatedUnion('is', [
  z.strictObject({
    is: z.literal('text'),
    x: Mm,
    /** Of the line on which the letters stand. */
    base: Mm,
    text: z.string(),
    size: Mm,
    width: Mm,
    isBold: z.boolean(),
    isWhite: z.boolean(),
  }),
  z.strictObject({ is: z.literal('bars'), dots: z.array(Dots) }),
  z.strictObject({
    is: z.literal('shape'),
    points: z.array(Point),
    isFilled: z.boolean(),
    isOpen: z.boolean(),
    thick: Mm,
  }),
])
export type PreviewMark = z.infer<typeof PreviewMark>

export const PreviewView = z.strictObject({
  words: z.string(),
  widthMm: Mm,
  heightMm: Mm,
  /** The first few labels of one kit. */
  labels: z.array(z.strictObject({ words: z.string(), marks: z.array(PreviewMark) })),
  kitLabels: z.int().nullable(),
  /** Why it cannot be printed on, or null. */
  refusal: z.strictObject({ say: z.string(), next: z.string() }).nullable(),
})
export type PreviewView = z.infer<typeof PreviewView>

export const PrinterView = z.strictObject({
  name: z.string(),
  words: z.string(),
  trouble: z.string().nullable(),
})

export const PrintersView = z.strictObject({
  printers: z.array(PrinterView),
  /** Why there are none, in words; null where there are some or none is set up. */
  trouble: z.string().nullable(),
})
export type PrintersView = z.infer<typeof PrintersView>

export const PrintJobView = z.strictObject({
  words: z.string(),
  printer: z.string(),
  state: z.enum(['printing', 'stopped', 'failed', 'done']),
  /** Labels handed to the printer and out of its queue. */
  out: z.int(),
  total: z.int(),
  /** Some were handed over of which nobody knows whether they came out: only a look at them tells. */
  unsure: z.boolean(),
  say: z.string(),
  next: z.string(),
})
export type PrintJobView = z.infer<typeof PrintJobView>

const Chosen = z.strictObject({ printer: z.string().nullable(), stock: StockName })

/** What this laptop prints on, and what it is printing. */
export const PrintingView = z.strictObject({
  chosen: z.record(LabelKind, Chosen),
  /** By printer; the empty name stands for printing from a PDF. */
  offsets: z.record(z.string(), PrinterOffset),
  /** How far the making of a PDF is, in labels; null while none is made. */
  making: z.strictObject({ made: z.int(), total: z.int() }).nullable(),
  job: PrintJobView.nullable(),
})
export type PrintingView = z.infer<typeof PrintingView>

export const JamView = z.strictObject({
  /** The number that was scanned; null where none came out good. */
  last: SampleNumber.nullable(),
  /** Labels of the run from it on, and in all. */
  left: z.int(),
  total: z.int(),
  /** The labels from it on, for the person to say which was the last good one. */
  ahead: z.array(z.strictObject({ number: SampleNumber, words: z.string() })),
})
export type JamView = z.infer<typeof JamView>
