/** The other thread: looks one log through, answers, and ends. */
import { parentPort, workerData } from 'node:worker_threads'
import { lookThroughFile } from './look-through.ts'

parentPort?.postMessage(await lookThroughFile(String(workerData)))
