/** Which files belong together: those that hold the same desks, or desks whose entries meet in a row. */
import type { Group } from './group.ts'
import { everything } from './ties.ts'

/** Names that were joined, directly or by others. */
class Joined {
  readonly #above = new Map<string, string>()

  rootOf(name: string): string {
    let root = name
    for (let above = this.#above.get(root); above !== undefined; above = this.#above.get(root))
      root = above
    return root
  }

  join(a: string, b: string): void {
    const [rootA, rootB] = [this.rootOf(a), this.rootOf(b)]
    if (rootA !== rootB) this.#above.set(rootA, rootB)
  }
}

/** Puts groups together that must be merged together; each is a list of files by their place. */
export function joinedGroups(
  made: readonly { readonly places: readonly number[]; readonly group: Group }[],
): number[][] {
  const joined = new Joined()
  for (const [at, { group }] of made.entries()) {
    for (const desk of group.desks) joined.join(`group ${at}`, desk)
    for (const [desk, other] of group.ties) joined.join(desk, other)
  }
  if (made.some(({ group }) => group.ties.some(([, other]) => other === everything)))
    for (const at of made.keys()) joined.join(`group ${at}`, everything)
  const byRoot = Map.groupBy(made.keys(), (at) => joined.rootOf(`group ${at}`))
  return [...byRoot.values()].map((ats) =>
    ats.flatMap((at) => made[at]?.places ?? []).toSorted((a, b) => a - b),
  )
}
