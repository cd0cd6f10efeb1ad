/** The tasks that a merge is made of, each done at one go by whoever is handed it. */
import type { Result } from '../../shared-types/result.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import { storing } from '../storage-refusal.ts'
import { Assembly } from './assembly.ts'
import { type Group, type GroupOrder, groupSteps } from './group.ts'
import { stopped } from './merge-refusals.ts'
import type { MergeProgress } from './report.ts'

export type MergeTask =
  | ({ readonly do: 'group' } & GroupOrder)
  | { readonly do: 'take'; readonly parts: readonly string[] }
  | { readonly do: 'take-anew'; readonly parts: readonly string[] }
  | { readonly do: 'finish' }

/** What each task answers with. */
export interface MergeAnswers {
  group: Group
  take: void
  'take-anew': void
  finish: void
}

/** Whoever does tasks, one at a time. Throws where it meets a fault of its own. */
export interface MergeHand {
  ask<T extends MergeTask>(
    task: T,
    progress?: (step: MergeProgress) => void,
  ): Promise<Result<MergeAnswers[T['do']]>>
  end(): Promise<void>
}

/** What one is started with. */
export interface MergeHandData {
  readonly out: string
  readonly office: DeskId | null
  /** Its first number is 1 once the merge is to stop. */
  readonly stop: Int32Array
}

export class MergeTasks {
  readonly #assembly: Assembly
  readonly #stop: Int32Array

  constructor({ out, office, stop }: MergeHandData) {
    this.#assembly = new Assembly(out, office)
    this.#stop = stop
  }

  /** Refuses as the medium does, or `stopped`. */
  do(task: MergeTask, progress: (step: MergeProgress) => void): Result<unknown> {
    return storing<unknown>(() => {
      switch (task.do) {
        case 'group':
          return this.#group(task, progress)
        case 'take':
          return this.#assembly.take(task.parts)
        case 'take-anew':
          return this.#assembly.takeAnew(task.parts)
        case 'finish':
          return this.#isStopped ? stopped() : this.#assembly.finish()
      }
    })
  }

  #group(order: GroupOrder, progress: (step: MergeProgress) => void): Result<Group> {
    const steps = groupSteps(order)
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done === true) return step.value
      progress(step.value)
      if (!this.#isStopped) continue
      const refusal = stopped()
      steps.return(refusal)
      return refusal
    }
  }

  get #isStopped(): boolean {
    return Atomics.load(this.#stop, 0) === 1
  }

  end(): void {
    this.#assembly.drop()
  }
}
