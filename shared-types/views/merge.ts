/** Merging at an office: where files lie, how far a merge is, what it brought, what is in dispute. */
import { z } from 'zod'
import { AnimalState, Species } from '../animal.ts'
import { DiscrepancyId, DiscrepancyKind, SettleChoice } from '../discrepancy.ts'
import { Refusal } from '../result.ts'
import { AnimalNumber, DeskId } from '../sample-number.ts'

/** A folder or stick with station logs in it. */
export const MergePlace = z.strictObject({
  /** What the screen says in place of a path. */
  place: z.string(),
  words: z.string(),
  files: z.array(z.strictObject({ file: z.string(), bytes: z.int().nonnegative() })),
})
export type MergePlace = z.infer<typeof MergePlace>

export const MergedFile = z.discriminatedUnion('state', [
  z.strictObject({
    file: z.string(),
    state: z.enum(['whole', 'damaged', 'newer-version']),
    added: z.int().nonnegative(),
    known: z.int().nonnegative(),
    altered: z.array(z.strictObject({ desk: z.string(), seq: z.int() })),
    unreadable: z.int().nonnegative(),
    desks: z.array(z.strictObject({ desk: DeskId, entries: z.int(), lastSeq: z.int() })),
  }),
  z.strictObject({ file: z.string(), state: z.literal('refused'), refusal: Refusal }),
])
export type MergedFile = z.infer<typeof MergedFile>

export const MergeReportView = z.strictObject({
  out: z.string(),
  files: z.array(MergedFile),
  entries: z.int().nonnegative(),
  added: z.int().nonnegative(),
  known: z.int().nonnegative(),
  desks: z.int().nonnegative(),
  notUnderstood: z.int().nonnegative(),
  /** How many discrepancies the merged record has, by kind. */
  inDispute: z.array(z.strictObject({ kind: DiscrepancyKind, count: z.int() })),
})
export type MergeReportView = z.infer<typeof MergeReportView>

export const MergeStateView = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('idle') }),
  z.strictObject({
    is: z.literal('running'),
    out: z.string(),
    doing: z.enum(['reading', 'folding', 'finishing']),
    file: z.string().nullable(),
    /** 0 to 1. */
    share: z.number().min(0).max(1),
  }),
  z.strictObject({ is: z.literal('done'), report: MergeReportView }),
  z.strictObject({ is: z.literal('stopped'), out: z.string() }),
  z.strictObject({ is: z.literal('refused'), out: z.string(), refusal: Refusal }),
])
export type MergeStateView = z.infer<typeof MergeStateView>

export const MergeView = z.strictObject({
  places: z.array(MergePlace),
  /** Merged logs of the shelf, into which more can be merged. */
  merged: z.array(z.strictObject({ file: z.string(), taken: z.boolean() })),
  state: MergeStateView,
})
export type MergeView = z.infer<typeof MergeView>

export const SideView = z.strictObject({
  key: z.string(),
  title: z.string(),
  lines: z.array(z.string()),
  desk: DeskId.nullable(),
  /** The station of that desk, in words. */
  station: z.string().nullable(),
  ms: z.int().nullable(),
})

export const WayView = z.strictObject({
  choice: SettleChoice,
  words: z.string(),
  namesSide: z.boolean(),
})

export const SettlementView = z.strictObject({
  choice: SettleChoice,
  /** What was settled, in words. */
  say: z.string(),
  words: z.string(),
  by: z.string(),
  desk: DeskId,
  ms: z.int(),
})

export const DiscrepancyView = z.strictObject({
  id: DiscrepancyId,
  kind: DiscrepancyKind,
  say: z.string(),
  next: z.string(),
  sides: z.array(SideView),
  ways: z.array(WayView),
  /** Whether counts, places and lists follow how it is settled; else it is only put on record. */
  isFollowed: z.boolean(),
  state: z.enum(['open', 'settled', 'settled-differently']),
  /** The settlements that stand; two or more where offices settled differently. */
  settled: z.array(SettlementView),
})
export type DiscrepancyView = z.infer<typeof DiscrepancyView>

/** Which of them are asked for: a season may have thousands. */
export const DiscrepancyPage = z.strictObject({
  from: z.int().nonnegative().default(0),
  count: z.int().min(1).max(1000).default(1000),
})
export type DiscrepancyPage = z.infer<typeof DiscrepancyPage>

export const DiscrepanciesView = z.strictObject({
  /** Those of the page, what is not settled first. */
  discrepancies: z.array(DiscrepancyView),
  /** How many there are in all, and how many of them are not settled. */
  all: z.int().nonnegative(),
  unsettled: z.int().nonnegative(),
  /** Settlements of discrepancies that more evidence has changed since, or that are gone. */
  earlier: z.array(SettlementView),
  entries: z.int().nonnegative(),
  stations: z.int().nonnegative(),
})
export type DiscrepanciesView = z.infer<typeof DiscrepanciesView>

export const FoundAnimal = z.strictObject({
  animal: AnimalNumber,
  tag: z.string(),
  hunter: z.string(),
  species: Species,
  state: AnimalState,
  desk: DeskId,
})

/** Animals found as their number, tag or hunter is typed; at most twenty. */
export const FoundView = z.strictObject({ animals: z.array(FoundAnimal) })
