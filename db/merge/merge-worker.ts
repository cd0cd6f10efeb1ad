/** A thread of a merge: does one task after another until it is told to end. */
import { parentPort, workerData } from 'node:worker_threads'
import { type MergeHandData, type MergeTask, MergeTasks } from './merge-tasks.ts'

const tasks = new MergeTasks(workerData as MergeHandData)

parentPort?.on('message', (task: MergeTask | 'end') => {
  if (task === 'end') {
    tasks.end()
    parentPort?.close()
    return
  }
  const answer = tasks.do(task, (progress) => parentPort?.postMessage({ progress }))
  parentPort?.postMessage({ answer })
})
