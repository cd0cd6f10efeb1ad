/**
 * Clocks that were apart. An effect does not come before its cause: if desk B tells at its 9:00 of a bag
 * that desk A sealed at its 9:40, B's clock was at least 40 minutes behind A's. Seen from both sides
 * this bounds the offset from above and below, as two-way time transfer does.
 */
import type { KnownEntry } from '../../../shared-types/entry.ts'
import type { DeskId } from '../../../shared-types/sample-number.ts'
import type { Discrepancy } from './discrepancy.ts'
import { groupsOf } from './groups.ts'

export interface Sight {
  /** The desk that told of it. */
  readonly desk: DeskId
  /** The desk that had made it. */
  readonly cause: DeskId
  readonly leastMs: number
  readonly facts: number
}

/** Clocks that differ by less are let be: two people read their watches that far apart. */
export const clockToleranceMs = 2 * 60_000

/** The offset of `desk`'s clock against `other`'s, in milliseconds: more is ahead. */
export interface Offset {
  readonly desk: DeskId
  readonly other: DeskId
  readonly atLeastMs: number | null
  readonly atMostMs: number | null
  readonly facts: number
}

/** What the sightings say about each pair of desks, `desk` before `other` in the alphabet. */
export function offsets(sights: readonly Sight[]): Offset[] {
  const pairs = groupsOf(sights, ({ desk, cause }) => [desk, cause].toSorted().join())
  return [...pairs]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([pair, seen]) => {
      const [desk, other] = pair.split(',') as [DeskId, DeskId]
      const least = (of: DeskId) => {
        const told = seen.filter((sight) => sight.desk === of).map(({ leastMs }) => leastMs)
        return told.length === 0 ? null : Math.min(...told)
      }
      const backwards = least(other)
      return {
        desk,
        other,
        // What `desk` tells late by its clock, it tells at most so late: its offset is at most that.
        atMostMs: least(desk),
        atLeastMs: backwards === null ? null : -backwards,
        facts: seen.reduce((all, { facts }) => all + facts, 0),
      }
    })
}

/** How far apart two clocks were for certain; 0 if they may have agreed. Positive: `desk` was ahead. */
export function certainOffset({ atLeastMs, atMostMs }: Offset): number {
  if (atMostMs !== null && atMostMs < -clockToleranceMs) return atMostMs
  if (atLeastMs !== null && atLeastMs > clockToleranceMs) return atLeastMs
  return 0
}

/** Pairs of desks whose clocks cannot have agreed. */
export function clocksApart(sights: readonly Sight[]): Discrepancy[] {
  return offsets(sights).flatMap((offset) => {
    const apart = certainOffset(offset)
    if (apart === 0) return []
    const { desk, other, facts } = offset
    const minutes = Math.round(Math.abs(apart) / 60_000)
    const [ahead, behind] = apart > 0 ? [desk, other] : [other, desk]
    return [
      {
        kind: 'clocks-apart' as const,
        evidence: ['clocks', desk, other, String(apart)],
        say: `The clock of desk ${ahead} was at least ${minutes} minutes ahead of that of desk ${behind}.`,
        next: 'Ask which of them was right. The order of what each desk did itself is not in doubt.',
        sides: [ahead, behind].map((each) => ({
          key: each,
          title: `Desk ${each}`,
          lines: [
            each === ahead
              ? `ahead by ${minutes} minutes or more`
              : `behind by ${minutes} minutes or more`,
            `from ${facts} facts that both desks told of`,
          ],
          desk: each,
          ms: null,
        })),
      },
    ]
  })
}

type Accepted = Extract<KnownEntry, { kind: 'clock.accepted' }>

/** Desks whose own clock was put back by more than can be let be: until then it had run ahead. */
export function clocksPutBack(accepted: readonly Accepted[]): Discrepancy[] {
  return accepted.flatMap(({ hash, desk, body }) => {
    const apart = body.lastMs - body.wallMs
    if (apart <= clockToleranceMs) return []
    const minutes = Math.round(apart / 60_000)
    return [
      {
        kind: 'clocks-apart' as const,
        evidence: [hash],
        say: `The clock of desk ${desk} was put back by ${minutes} minutes: before that it may have run ahead.`,
        next: 'Ask the lead whether it ran ahead before, or runs behind since.',
        sides: [
          {
            key: 'before',
            title: 'The clock before',
            lines: [`read ${minutes} minutes more`],
            desk,
            ms: body.lastMs,
          },
          {
            key: 'since',
            title: 'The clock since',
            lines: ['accepted by the lead'],
            desk,
            ms: body.wallMs,
          },
        ],
      },
    ]
  })
}
