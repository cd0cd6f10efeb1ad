/** The entry: one fact in the station log. Never changed; an amendment is another entry. */
import { z } from 'zod'
import {
  AnimalAmended,
  AnimalAssigned,
  AnimalCheckedIn,
  AnimalFinished,
  AnimalLeft,
  AnimalOutcomeChanged,
  AnimalPutBack,
  AnimalStruckOut,
} from './animal.ts'
import { CountEntered, DayClosed, HandoverWritten, VarianceExplained } from './close.ts'
import { ContactsPurged, PassphraseSet } from './contacts.ts'
import { CoolerKept, CoolerOpened, CoolerRead, CoolerSealed, SealBroken } from './cooler.ts'
import { CoveragePlanned, UnitOutlined } from './coverage.ts'
import { DiscrepancySettled } from './discrepancy.ts'
import { DeskMovedOut, DeskTakenOver } from './desk-move.ts'
import {
  CoolerScannedOut,
  HandoffBegun,
  HandoffCalledOff,
  HandoffCorrected,
  HandoffSigned,
} from './handoff.ts'
import { KitBrought, KitNumbered, KitOpened, KitSpoiled, KitsMoved } from './kit.ts'
import {
  HunterTold,
  ResultFollowedUp,
  ResultReported,
  ResultRulesSet,
  ResultsRead,
  RowSettled,
} from './laboratory-result.ts'
import { LabelVoided, LabelsPrinted, LabelsResumed } from './label.ts'
import { StockDescribed, StockRetired } from './label-stock.ts'
import { AirRead, SuggestionOverridden, WaitTold } from './line.ts'
import {
  DutyChanged,
  PersonAdded,
  PersonChanged,
  PinSet,
  ShiftPlanned,
  SignedIn,
} from './person.ts'
import { ReadingsImported } from './readings-file.ts'
import { ReceiptCounted } from './receipt.ts'
import { DeskId, PersonId } from './sample-number.ts'
import { SlipTakenBack } from './slip.ts'
import { EntryTime } from './stamp.ts'
import { StationClosed, StationVarianceExplained } from './station-close.ts'
import {
  ClockAccepted,
  DayOpened,
  DayReopened,
  OfficeSetUp,
  SettingsChanged,
  StationSetUp,
} from './station.ts'
import {
  BagDiscarded,
  BagPlaced,
  BagSealed,
  BagTakenOut,
  TissueChecked,
  TissueMissed,
  TissueReopened,
} from './tissue.ts'
import { HandoffClassed, HandoffPacked } from './transport.ts'

/** The version of the set below. A test fails when the set changes and this number does not. */
export const formatVersion = 1

/** Every kind of entry and the body it carries. */
export const entryBodies = {
  'station.set-up': StationSetUp,
  'office.set-up': OfficeSetUp,
  'settings.changed': SettingsChanged,
  'clock.accepted': ClockAccepted,
  'desk.moved-out': DeskMovedOut,
  'desk.taken-over': DeskTakenOver,
  'contacts.passphrase-set': PassphraseSet,
  'contacts.purged': ContactsPurged,
  'person.added': PersonAdded,
  'person.changed': PersonChanged,
  'pin.set': PinSet,
  'person.signed-in': SignedIn,
  'shift.planned': ShiftPlanned,
  'duty.changed': DutyChanged,
  'day.opened': DayOpened,
  'kits.moved': KitsMoved,
  'kit.numbered': KitNumbered,
  'kit.brought': KitBrought,
  'kit.opened': KitOpened,
  'kit.spoiled': KitSpoiled,
  'labels.printed': LabelsPrinted,
  'labels.resumed': LabelsResumed,
  'label.voided': LabelVoided,
  'stock.described': StockDescribed,
  'stock.retired': StockRetired,
  'animal.checked-in': AnimalCheckedIn,
  'animal.amended': AnimalAmended,
  'animal.assigned': AnimalAssigned,
  'animal.put-back': AnimalPutBack,
  'animal.left': AnimalLeft,
  'animal.struck-out': AnimalStruckOut,
  'animal.finished': AnimalFinished,
  'animal.outcome-changed': AnimalOutcomeChanged,
  'wait.told': WaitTold,
  'suggestion.overridden': SuggestionOverridden,
  'air.read': AirRead,
  'tissue.checked': TissueChecked,
  'tissue.missed': TissueMissed,
  'tissue.reopened': TissueReopened,
  'bag.sealed': BagSealed,
  'bag.discarded': BagDiscarded,
  'bag.placed': BagPlaced,
  'bag.taken-out': BagTakenOut,
  'cooler.opened': CoolerOpened,
  'cooler.read': CoolerRead,
  'cooler.logger-read': ReadingsImported,
  'cooler.kept': CoolerKept,
  'cooler.sealed': CoolerSealed,
  'seal.broken': SealBroken,
  'count.entered': CountEntered,
  'variance.explained': VarianceExplained,
  'day.closed': DayClosed,
  'day.reopened': DayReopened,
  'station.variance-explained': StationVarianceExplained,
  'station.closed': StationClosed,
  'handover.written': HandoverWritten,
  'handoff.begun': HandoffBegun,
  'cooler.scanned-out': CoolerScannedOut,
  'handoff.called-off': HandoffCalledOff,
  'handoff.classed': HandoffClassed,
  'handoff.packed': HandoffPacked,
  'handoff.signed': HandoffSigned,
  'handoff.corrected': HandoffCorrected,
  'receipt.counted': ReceiptCounted,
  'slip.taken-back': SlipTakenBack,
  'discrepancy.settled': DiscrepancySettled,
  'results.read': ResultsRead,
  'results.row-settled': RowSettled,
  'results.rules-set': ResultRulesSet,
  'result.reported': ResultReported,
  'result.followed-up': ResultFollowedUp,
  'hunter.told': HunterTold,
  'coverage.planned': CoveragePlanned,
  'outline.supplied': UnitOutlined,
} as const

export type EntryKind = keyof typeof entryBodies
export type EntryBody<K extends EntryKind> = z.infer<(typeof entryBodies)[K]>

export const Hash = z.string().regex(/^[0-9a-f]{64}$/)

/** An entry as stored and passed on, whatever its kind: kinds of later versions are kept too. */
export const Entry = z.strictObject({
  desk: DeskId,
  seq: z.int().min(1),
  at: EntryTime,
  by: PersonId.nullable(),
  kind: z.string().regex(/^[a-z]+\.[a-z-]+$/),
  v: z.int().min(1),
  body: z.record(z.string(), z.json()),
  prev: Hash,
  hash: Hash,
})
export type Entry = z.infer<typeof Entry>

/** What a rule decides to write; the log adds who, when and the chain. */
export type EntryDraft = {
  [K in EntryKind]: { readonly kind: K; readonly v: number; readonly body: EntryBody<K> }
}[EntryKind]

/** An entry of a kind this version knows. */
export type KnownEntry = {
  [K in EntryKind]: Omit<Entry, 'kind' | 'body'> & { readonly kind: K; readonly body: EntryBody<K> }
}[EntryKind]

/** One fact to be written, at the version of its kind that this program writes. */
export function draft<K extends EntryKind>(kind: K, body: EntryBody<K>): EntryDraft {
  return { kind, v: 1, body } as EntryDraft
}

/** Whether this version knows the kind of an entry. */
export function isKnownKind(kind: string): kind is EntryKind {
  return Object.hasOwn(entryBodies, kind)
}
