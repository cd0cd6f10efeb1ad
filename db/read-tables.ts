/**
 * The tables folded from the entries, as Kysely knows them. Rebuilt from the log at any time.
 * Columns named `*_ms` hold the wall milliseconds of the entry that set them; columns of JSON text
 * are parsed by the schemas of `shared-types` when read.
 */
import type {
  AgeClass,
  AnimalState,
  Consent,
  NoSampleReason,
  Outcome,
  Programme,
  Sex,
  Species,
} from '../shared-types/animal.ts'
import type { CoolerState } from '../shared-types/cooler.ts'
import type { HandoffState } from '../shared-types/handoff.ts'
import type { KitState } from '../shared-types/kit.ts'
import type { VoidReason } from '../shared-types/label.ts'
import type { StockName } from '../shared-types/label-stock.ts'
import type { LocalDate } from '../shared-types/local-date.ts'
import type { Duty, Role } from '../shared-types/person.ts'
import type {
  AnimalNumber,
  BagNumber,
  CoolerNumber,
  DeskId,
  HandoffNumber,
  KitNumber,
  PersonId,
  SampleNumber,
  SeasonStation,
} from '../shared-types/sample-number.ts'
import type { Keeping } from '../shared-types/station.ts'
import type {
  BagPlace,
  Kept,
  MissedReason,
  TissueCheck,
  TissueSite,
} from '../shared-types/tissue.ts'
import type { ResultTables } from './result-tables.ts'
import type { DiscrepancyKind, SettleChoice } from '../shared-types/discrepancy.ts'
import type { VarianceReason } from '../shared-types/close.ts'

export interface StationTable {
  desk: DeskId
  name: string
  zone: string
  practice: 0 | 1
  office: 0 | 1
  settings: string
  set_up_ms: number
}

export interface PersonTable {
  person: PersonId
  name: string
  role: Role
  /** JSON array of trainings. */
  training: string
  active: 0 | 1
  duty: Duty
  /** When the duty last changed, or null while it never did. */
  duty_ms: number | null
}

export interface ShiftTable {
  person: PersonId
  date: LocalDate
  from_time: string
  to_time: string
}

export interface DayTable {
  desk: DeskId
  date: LocalDate
  state: 'open' | 'closed'
  blank_labels: number
  opened_ms: number
  closed_ms: number | null
  closed_by: PersonId | null
  reopened_ms: number | null
  /** JSON of the `day.closed` body, once closed, and the hash of that entry. */
  sheet: string | null
  close_hash: string | null
}

export interface AnimalTable {
  animal: AnimalNumber
  desk: DeskId
  day: LocalDate
  hunter: string
  tag: string
  species: Species
  sex: Sex
  age: AgeClass
  harvested: LocalDate
  harvested_at: string | null
  place: string
  head: string
  /** The unit out of `place`, null where none is known: coverage counts by it. */
  unit: string | null
  consent: Consent
  programme: Programme
  contact: string | null
  no_sample: NoSampleReason | null
  state: AnimalState
  arrived_ms: number
  /** The latest assignment, kept after the animal is finished: the end of its wait. */
  assigned_ms: number | null
  sampler: PersonId | null
  outcome: Outcome | null
  finished_ms: number | null
  /** The record of the same animal that counts, where an office ruled that this one is it once more. */
  duplicate_of: AnimalNumber | null
}

/** The wait that a hunter was told, in minutes; `chance` in a hundred that it falls in the range. */
export interface ToldTable {
  animal: AnimalNumber
  low: number
  high: number
  chance: number
  ms: number
  /** When a sampler first took the animal after that, or null while it waits. */
  taken_ms: number | null
}

/** Pairs that a lead set aside: this animal is not suggested to this sampler again. */
export interface SetAsideTable {
  animal: AnimalNumber
  sampler: PersonId
  ms: number
}

/** The air at the line as it was last read. */
export interface AirTable {
  desk: DeskId
  celsius: number
  ms: number
}

export interface KitTable {
  kit: KitNumber
  animal: AnimalNumber | null
  state: KitState
  sampler: PersonId | null
  numbered_ms: number
  opened_ms: number | null
  /** Who told the desk that it was opened; usually the sampler. */
  opened_by: PersonId | null
}

/** One side of one transfer of the kit ledger; the two lines of an entry add up to nothing. */
export interface KitLineTable {
  hash: string
  line: 0 | 1
  account: string
  delta: number
  ms: number
}

export interface LabelTable {
  number: SampleNumber
  copy: number
  kit: KitNumber | null
  stock: StockName
  /** The `labels.printed` that it came from, and its place among the labels of that run. */
  run: string
  place: number
  printed_ms: number
  void_reason: VoidReason | null
  void_ms: number | null
}

export interface LabelRunTable {
  hash: string
  blanks: number
  by_hand: 0 | 1
  /** The run that goes on after this one, and the place in it. */
  goes_on: string | null
  goes_on_from: number | null
  ms: number
}

/** A label stock as it was described last. */
export interface StockTable {
  name: StockName
  /** Its measurements, JSON. */
  stock: string
  retired: 0 | 1
}

export interface TissueTable {
  animal: AnimalNumber
  site: TissueSite
  seen: TissueCheck | null
  size_mm: number | null
  missed: MissedReason | null
  missed_words: string
  bag: BagNumber | null
}

/** Every look at a cut face, also those that were not a node: what training follows from. */
export interface LookTable {
  hash: string
  animal: AnimalNumber
  site: TissueSite
  seen: TissueCheck
  sampler: PersonId | null
  ms: number
}

export interface BagTable {
  bag: BagNumber
  animal: AnimalNumber
  kit: KitNumber
  site: TissueSite
  kept: Kept
  sealed_ms: number
  place: BagPlace
  cooler: CoolerNumber | null
  handoff: HandoffNumber | null
}

export interface CoolerTable {
  cooler: CoolerNumber
  name: string
  keeping: Keeping
  capacity: number | null
  state: CoolerState
  seal: string | null
  handoff: HandoffNumber | null
}

export interface ReadingTable {
  /** Of the entry, with its place in it where the entry holds many. */
  hash: string
  cooler: CoolerNumber
  celsius: number
  excursion: 0 | 1
  ms: number
  /** Its place in the log's own time, which a clock put back does not disturb. */
  log_ms: number
  by: PersonId | null
  /** The logger's file; empty where a person read it. */
  source: string
}

/** The count of a thing that stands. */
export interface CountTable {
  desk: DeskId
  date: LocalDate
  key: string
  counted: number
  /** JSON array of the bags scanned in a cooler, or null where it was counted by eye. */
  bags: string | null
}

/** Every count ever entered. */
export interface CountTryTable {
  hash: string
  desk: DeskId
  date: LocalDate
  key: string
  counted: number
  by: PersonId | null
  ms: number
}

/** The handover note of a day. */
export interface HandoverTable {
  desk: DeskId
  date: LocalDate
  words: string
  by: PersonId | null
  ms: number
}

export interface VarianceTable {
  desk: DeskId
  date: LocalDate
  key: string
  expected: number
  counted: number
  reason: VarianceReason
  words: string
}

/** Why the count of a station differs over all its desks. */
export interface StationVarianceTable {
  station: SeasonStation
  date: LocalDate
  key: string
  expected: number
  counted: number
  reason: VarianceReason
  words: string
}

/** The close of a station over its desks, as last signed. */
export interface StationCloseTable {
  station: SeasonStation
  date: LocalDate
  hash: string
  ms: number
  /** JSON of the `station.closed` body. */
  sheet: string
}

/** Every seal that was ever put on a cooler: its number is used once. */
export interface SealTable {
  seal: string
  cooler: CoolerNumber
  sealed_ms: number
  broken_ms: number | null
}

export interface HandoffTable {
  handoff: HandoffNumber
  destination: string
  state: HandoffState
  supplements: HandoffNumber | null
  /** JSON of the `handoff.classed` body, once classed. */
  classed: string | null
  /** JSON of the `handoff.packed` body, once packed. */
  packed: string | null
  begun_ms: number
  signed_ms: number | null
  /** JSON of the manifest as signed. */
  manifest: string | null
  lead_signature: string | null
  courier_signature: string | null
  digest: string | null
}

export interface HandoffCoolerTable {
  handoff: HandoffNumber
  cooler: CoolerNumber
  seal: string | null
  celsius: number | null
  counted: number | null
  expected: number | null
  words: string
  scanned_ms: number | null
}

/** A clock that a lead put back: what it read then, and what the log had reached. */
export interface ClockPutBackTable {
  hash: string
  wall_ms: number
  last_ms: number
}

/** Every counter-scan that came back. */
export interface ReceiptTable {
  hash: string
  handoff: HandoffNumber
  /** JSON of the `receipt.counted` body. */
  body: string
  ms: number
  by: PersonId | null
}

/** Every settlement of a discrepancy; which ones stand follows from what they replace. */
export interface SettlementTable {
  hash: string
  discrepancy: string
  kind: DiscrepancyKind
  choice: SettleChoice
  side: string | null
  words: string
  /** JSON array of hashes. */
  replaces: string
  desk: DeskId
  by: PersonId | null
  ms: number
}

/** What a desk's office judges coverage by, as it last set it. */
export interface CoveragePlanTable {
  desk: DeskId
  /** JSON of the plan. */
  plan: string
  ms: number
}

export interface UnitOutlineTable {
  unit: string
  /** JSON of the polygons. */
  polygons: string
  file: string
  ms: number
}

export interface ReadTables extends ResultTables {
  settlement: SettlementTable
  coverage_plan: CoveragePlanTable
  unit_outline: UnitOutlineTable
  station: StationTable
  person: PersonTable
  shift: ShiftTable
  day: DayTable
  animal: AnimalTable
  told: ToldTable
  set_aside: SetAsideTable
  air: AirTable
  kit: KitTable
  kit_line: KitLineTable
  label: LabelTable
  label_run: LabelRunTable
  stock: StockTable
  tissue: TissueTable
  look: LookTable
  bag: BagTable
  cooler: CoolerTable
  reading: ReadingTable
  count: CountTable
  count_try: CountTryTable
  handover: HandoverTable
  variance: VarianceTable
  station_variance: StationVarianceTable
  station_close: StationCloseTable
  seal: SealTable
  handoff: HandoffTable
  handoff_cooler: HandoffCoolerTable
  receipt: ReceiptTable
  clock_put_back: ClockPutBackTable
}
