/** Where the chains of a merged log divide, leave entries out, or do not follow. */
import { sql } from 'kysely'
import type { DeskId } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll } from '../statement.ts'

/** One side of a fork, from its first entry on. */
export interface ForkSide {
  readonly hash: string
  readonly entries: number
  readonly lastSeq: number
  readonly firstMs: number
  readonly lastMs: number
}

export interface Fork {
  readonly desk: DeskId
  /** The number that is there more than once. */
  readonly seq: number
  readonly sides: readonly ForkSide[]
}

export interface Gap {
  readonly desk: DeskId
  /** The last entry before the gap; 0 where the chain's beginning is missing. */
  readonly before: number
  readonly after: number
  readonly hash: string
}

export interface BrokenLink {
  readonly desk: DeskId
  readonly seq: number
  readonly hash: string
}

export interface ChainBreaks {
  readonly forks: readonly Fork[]
  readonly gaps: readonly Gap[]
  readonly brokenLinks: readonly BrokenLink[]
  /** Which side of a fork an entry is on, by its hash; entries on no side are common to all. */
  readonly sideOf: ReadonlyMap<string, string>
}

const chains = prepareAll((db) =>
  db
    .selectFrom('entry')
    .select(['desk'])
    .select(sql<number>`count(*)`.as('entries'))
    .select(sql<number>`count(DISTINCT seq)`.as('numbers'))
    .select(sql<number>`max(seq)`.as('last'))
    .groupBy('desk')
    .orderBy('desk'),
)

/** Entries that do not carry the hash of the one before, in chains with one entry a number. */
const strayInPlainChains = prepareAll((db, p: Params<{ plain: string }>) =>
  db
    .selectFrom(
      db
        .selectFrom('entry')
        .select(['desk', 'seq', 'hash', 'prev'])
        .select(sql<string>`lag(hash) OVER (PARTITION BY desk ORDER BY seq)`.as('before'))
        .where(sql<boolean>`desk IN (SELECT value FROM json_each(${p('plain')}))`)
        .as('chained'),
    )
    .select(['desk', 'seq', 'hash'])
    .whereRef('prev', '<>', 'before'),
)

interface Link {
  readonly desk: DeskId
  readonly seq: number
  readonly hash: string
  readonly prev: string
  readonly wall: number
}

const links = prepareAll((db, p: Params<{ desk: DeskId }>) =>
  db
    .selectFrom('entry')
    .select(['desk', 'seq', 'hash', 'prev', 'wall'])
    .where('desk', '=', p('desk'))
    .orderBy('seq')
    .orderBy('hash'),
)

/** Looks through all chains; chains that are plain cost one pass, the others are followed link by link. */
export function chainBreaks(log: ReadableLog): ChainBreaks {
  const all = chains(log)
  const isPlain = ({ entries, numbers, last }: (typeof all)[number]) =>
    entries === numbers && numbers === last
  const plain = JSON.stringify(all.filter(isPlain).map(({ desk }) => desk))
  const followed = all
    .filter((chain) => !isPlain(chain))
    .map(({ desk }) => follow(links(log, { desk })))
  return {
    forks: followed.flatMap(({ forks }) => forks),
    gaps: followed.flatMap(({ gaps }) => gaps),
    brokenLinks: [
      ...strayInPlainChains(log, { plain }),
      ...followed.flatMap(({ brokenLinks }) => brokenLinks),
    ],
    sideOf: new Map(followed.flatMap(({ sideOf }) => [...sideOf])),
  }
}

/** One chain, its links in the order of their numbers. */
function follow(chain: readonly Link[]): ChainBreaks {
  const byHash = new Map(chain.map((link) => [link.hash, link]))
  const bySeq = Map.groupBy(chain, ({ seq }) => seq)
  const gaps: Gap[] = []
  const brokenLinks: BrokenLink[] = []
  let before = 0
  for (const [seq, here] of bySeq) {
    const [first] = here
    if (seq !== before + 1 && first)
      gaps.push({ desk: first.desk, before, after: seq, hash: first.hash })
    else if (seq > 1)
      brokenLinks.push(
        ...here
          .filter(({ prev }) => !byHash.has(prev))
          .map(({ desk, hash }) => ({ desk, seq, hash })),
      )
    before = seq
  }
  return { gaps, brokenLinks, ...forksOf(chain) }
}

function forksOf(chain: readonly Link[]): Pick<ChainBreaks, 'forks' | 'sideOf'> {
  const children = Map.groupBy(chain, ({ seq, prev }) => `${seq} ${prev}`)
  const followers = (link: Link) => children.get(`${link.seq + 1} ${link.hash}`) ?? []
  const forks: Fork[] = []
  const sideOf = new Map<string, string>()
  for (const siblings of children.values()) {
    const [first] = siblings
    if (siblings.length < 2 || !first) continue
    const sides = siblings.map((sibling) => sideFrom(sibling, followers, sideOf))
    forks.push({ desk: first.desk, seq: first.seq, sides })
  }
  return { forks, sideOf }
}

/** Follows a side to its ends; a fork within it is followed too, and labels its own sides later. */
function sideFrom(
  start: Link,
  followers: (link: Link) => readonly Link[],
  sideOf: Map<string, string>,
): ForkSide {
  const ahead = [start]
  let [entries, lastSeq, lastMs] = [0, start.seq, start.wall]
  for (let link = ahead.pop(); link !== undefined; link = ahead.pop()) {
    sideOf.set(link.hash, start.hash)
    entries += 1
    if (link.seq >= lastSeq) [lastSeq, lastMs] = [link.seq, link.wall]
    ahead.push(...followers(link))
  }
  return { hash: start.hash, entries, lastSeq, firstMs: start.wall, lastMs }
}
