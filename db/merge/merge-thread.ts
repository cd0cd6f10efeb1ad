/** A thread of a merge as the one who hands out its tasks sees it. */
import { Worker } from 'node:worker_threads'
import type { Result } from '../../shared-types/result.ts'
import type { MergeAnswers, MergeHand, MergeHandData, MergeTask } from './merge-tasks.ts'
import type { MergeProgress } from './report.ts'

type Heard = { readonly progress: MergeProgress } | { readonly answer: Result<never> }

/** Beside this file, by the name it has as a source or as the bundle of it. */
const worker = new URL(
  import.meta.url.endsWith('.ts') ? './merge-worker.ts' : './merge-worker.js',
  import.meta.url,
)

/** Left to itself, a thread takes what memory it can get for rows that are done with at once. */
const lean = { maxYoungGenerationSizeMb: 24 }

export class MergeThread implements MergeHand {
  readonly #worker: Worker
  readonly #ended: Promise<void>

  constructor(data: MergeHandData) {
    this.#worker = new Worker(worker, { workerData: data, resourceLimits: lean })
    this.#ended = new Promise((resolve) => this.#worker.once('exit', () => resolve()))
    // Without a listener an error would end this thread too; it is told to whoever asked.
    this.#worker.on('error', () => {})
  }

  ask<T extends MergeTask>(
    task: T,
    progress: (step: MergeProgress) => void = () => undefined,
  ): Promise<Result<MergeAnswers[T['do']]>> {
    return new Promise((resolve, reject) => {
      const fail = () => reject(new Error(`a thread ended at ${task.do}`))
      const hear = (heard: Heard) => {
        if ('progress' in heard) return progress(heard.progress)
        this.#worker.off('message', hear)
        this.#worker.off('exit', fail)
        resolve(heard.answer)
      }
      this.#worker.on('message', hear)
      this.#worker.once('exit', fail)
      this.#worker.postMessage(task)
    })
  }

  /**
   * Its end is waited for: a program that ends while another thread still puts the database library away
   * dies in the middle of it.
   */
  async end(): Promise<void> {
    this.#worker.postMessage('end')
    await this.#ended
  }
}
