/** Looks through a log of ours by its file, whether or not it is open at the desk. */
import { withOwnLog } from '../../db/aside-task.ts'
import type { Discrepancy } from '../station/discrepancy/discrepancy.ts'
import { discrepanciesIn } from './discrepancy-evidence.ts'

/** Everything in dispute in a log; nothing where it cannot be read. */
export async function lookThroughFile(path: string): Promise<readonly Discrepancy[]> {
  const found = await withOwnLog(path, discrepanciesIn)
  return found.ok ? found.value : []
}
