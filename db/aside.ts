/** Work on a log in a thread of its own, so that no scan waits for a slow stick. */
import { Worker } from 'node:worker_threads'
import type { Result } from '../shared-types/result.ts'
import { type AsideAnswers, type AsideTask, doTask } from './aside-task.ts'

/** Beside this file, by the name it has as a source or as the bundle of it. */
const usualWorker = new URL(
  import.meta.url.endsWith('.ts') ? './aside-worker.ts' : './aside-worker.js',
  import.meta.url,
)

/**
 * Does a task in another thread. Where none can be started it is done in this one: a backup that holds
 * the desk up for a moment is better than none.
 */
export async function aside<T extends AsideTask>(
  task: T,
  worker: URL = usualWorker,
): Promise<Result<AsideAnswers[T['do']]>> {
  const answer = await inThread(task, worker)
  return (answer ?? (await doTask(task))) as Result<AsideAnswers[T['do']]>
}

/**
 * The answer of the other thread; undefined if it could not do its work. Its end is waited for: a program
 * that ends while another thread still puts the database library away dies in the middle of it.
 */
function inThread(task: AsideTask, file: URL): Promise<Result<unknown> | undefined> {
  return new Promise((resolve) => {
    let answer: Result<unknown> | undefined
    const worker = new Worker(file, { workerData: task })
    worker.once('message', (message: Result<unknown>) => {
      answer = message
    })
    // Without a listener it would end this thread too; what went wrong shows when it is done here.
    worker.once('error', () => {})
    worker.once('exit', () => resolve(answer))
  })
}
