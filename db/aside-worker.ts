/** The other thread: does the one task it was started for, answers, and ends. */
import { parentPort, workerData } from 'node:worker_threads'
import { type AsideTask, doTask } from './aside-task.ts'

parentPort?.postMessage(await doTask(workerData as AsideTask))
