/**
 * The labels on their way to a printer. They are handed over in portions, each only when the one before
 * it is out, so that stopping stops soon and a printer that vanishes is noticed at its label.
 */
import type { Refusal, Result } from '../../shared-types/result.ts'
import type { PrintingView, PrintJobView } from '../../shared-types/views/printing.ts'
import { type LabelRun, someOfRun } from '../print/label-run.ts'
import type { PrinterOffset } from '../print/label-stock.ts'
import { movedPages } from '../print/label-stock.ts'
import { writePdf } from '../print/pdf-writer.ts'
import type { Handed, Printers } from '../print/printers.ts'

export interface PrintRoomDeps {
  /** Absent where there is no printing system to reach: then there are only PDFs. */
  readonly printers: Printers | undefined
  /** Told when there is something new to show. */
  readonly onNews: () => void
}

interface Job {
  readonly run: LabelRun
  readonly words: string
  readonly offset: PrinterOffset
  printer: string
  out: number
  state: PrintJobView['state']
  say: string
  next: string
  handed: Handed | null
}

/** Labels of one portion: about a minute of a label printer. */
const portionLabels = 60

const lookAtPrinter =
  'Look which label came out last, and scan it: printing goes on from there, and no label comes out twice.'

/** Between two looks at the printer. */
const lookMs = 700

export class PrintRoom {
  readonly #deps: PrintRoomDeps
  #job: Job | null = null
  #making: PrintingView['making'] = null
  #working: Promise<void> | null = null

  constructor(deps: PrintRoomDeps) {
    this.#deps = deps
  }

  get printers(): Printers | undefined {
    return this.#deps.printers
  }

  /** The PDF of a run, moved as its printer needs; how far it is can be watched. */
  async write(run: LabelRun, offset: PrinterOffset): Promise<Uint8Array> {
    const total = run.blanks
    const pages = movedPages(run.pages, offset, run.stock.dpi)
    try {
      return await writePdf(pages, run.heading, (written) => {
        this.#making = {
          made: Math.min(total, Math.round((written / pages.length) * total)),
          total,
        }
        this.#deps.onNews()
      })
    } finally {
      if (this.#making) this.#deps.onNews()
      this.#making = null
    }
  }

  /** Begins to print. A job that was stopped or failed is forgotten: its labels go on by a scan. */
  print(run: LabelRun, printer: string, offset: PrinterOffset, words: string): boolean {
    if (this.#job?.state === 'printing') return false
    this.#job = {
      run,
      words,
      offset,
      printer,
      out: 0,
      state: 'printing',
      say: 'Printing.',
      next: '',
      handed: null,
    }
    this.#begin(this.#job)
    return true
  }

  /** No more is handed over, and what waits in the queue is taken back. */
  async stop(): Promise<void> {
    const job = this.#job
    if (job?.state !== 'printing') return
    const { handed } = job
    this.#set(job, {
      state: 'stopped',
      say: `Stopped after label ${job.out} of ${job.run.blanks}${handed ? ', or a few later' : ''}.`,
      next: handed ? lookAtPrinter : 'Go on when you are ready.',
    })
    if (handed) await this.#deps.printers?.cancel(handed)
    await this.#working
  }

  /**
   * Goes on with what was not handed over, on the same printer or another. Not while labels were handed
   * over of which nobody knows whether they came out: they could come out twice.
   */
  goOn(printer: string | null): boolean {
    const job = this.#job
    if (!job || (job.state !== 'stopped' && job.state !== 'failed') || job.handed) return false
    job.printer = printer ?? job.printer
    this.#set(job, { state: 'printing', say: 'Printing.', next: '' })
    this.#begin(job)
    return true
  }

  look(): Pick<PrintingView, 'making' | 'job'> {
    const job = this.#job
    return {
      making: this.#making,
      job: job && {
        words: job.words,
        printer: job.printer,
        state: job.state,
        out: job.out,
        total: job.run.blanks,
        unsure: job.state !== 'printing' && job.handed !== null,
        say: job.say,
        next: job.next,
      },
    }
  }

  /** Waits for the portion under way, so that no program outlives the desk. */
  async close(): Promise<void> {
    await this.stop()
    await this.#working
  }

  #set(job: Job, change: Partial<Job>): void {
    Object.assign(job, change)
    this.#deps.onNews()
  }

  #begin(job: Job): void {
    const { printers } = this.#deps
    if (!printers) return
    this.#working = this.#work(job, printers).finally(() => {
      this.#working = null
    })
  }

  async #work(job: Job, printers: Printers): Promise<void> {
    while (job.out < job.run.blanks && job.state === 'printing') {
      const until = nextPortion(job)
      const done = await this.#portion(job, printers, until)
      if (job.state !== 'printing') return
      if (!done.ok) return this.#fail(job, done.refusal)
      this.#set(job, { out: until, handed: null })
    }
    if (job.state === 'printing')
      this.#set(job, { state: 'done', say: `All ${job.run.blanks} labels are out.`, next: '' })
  }

  #fail(job: Job, { say, next }: Refusal): void {
    this.#set(job, { state: 'failed', say, next: job.handed ? `${next} ${lookAtPrinter}` : next })
  }

  /** One portion, until it is out of the printer's queue. */
  async #portion(job: Job, printers: Printers, until: number): Promise<Result<null>> {
    const places = Array.from({ length: until - job.out }, (_, place) => job.out + place)
    const part = someOfRun(job.run, places)
    const pages = movedPages(part.pages, job.offset, part.stock.dpi)
    const pdf = await writePdf(pages, part.heading)
    const handed = await printers.send(pdf, job.printer, pageOf(part))
    if (!handed.ok) return handed
    job.handed = handed.value
    while (job.state === 'printing') {
      const progress = await printers.progress(handed.value)
      if (!progress.ok) return progress
      if (progress.value.is === 'out') break
      if (job.say !== progress.value.say) this.#set(job, { say: progress.value.say })
      await new Promise((resolve) => setTimeout(resolve, lookMs))
    }
    return { ok: true, value: null }
  }
}

/** The label before which the next portion ends: whole sheets, where the stock is sheets. */
function nextPortion({ run, out }: Job): number {
  const { stock } = run
  const sheet = stock.kind === 'sheet' ? stock.columns * stock.rows : 1
  const labels = Math.max(1, Math.floor(portionLabels / sheet)) * sheet
  return Math.min(run.blanks, out + labels)
}

function pageOf({ stock }: LabelRun): { widthMm: number; heightMm: number } {
  return stock.kind === 'sheet'
    ? { widthMm: stock.paperWidthMm, heightMm: stock.paperHeightMm }
    : { widthMm: stock.widthMm, heightMm: stock.heightMm }
}
