/**
 * The desk API: every query and command, with what goes in and what comes out.
 * Preload, loopback, terminal and tests all call this one contract.
 *
 * Numbers come in as scanned or typed text (`Scan`): the desk verifies the check character,
 * the part and the station before anything else happens.
 */
import { z } from 'zod'
import { AnimalFacts, Contact, NoSampleReason, Outcome } from './animal.ts'
import { command, query } from './call-shape.ts'
import { CountItem, VarianceReason } from './close.ts'
import { coverageCalls } from './coverage-calls.ts'
import { DiscrepancyId, SettleChoice } from './discrepancy.ts'
import { Celsius, CoolerKeptBy } from './cooler.ts'
import { Passphrase } from './contacts.ts'
import { Courier } from './courier.ts'
import { Signature } from './handoff.ts'
import { GuideFor } from './help/guides.ts'
import { KitAccount } from './kit.ts'
import { VoidReason } from './label.ts'
import { LabelStock, StockName } from './label-stock.ts'
import { LocalDate, TimeOfDay, Zone } from './local-date.ts'
import { Duty, PersonName, Pin, Role, Training } from './person.ts'
import {
  AnimalNumber,
  CoolerNumber,
  DeskLetter,
  HandoffNumber,
  KitNumber,
  Part,
  PersonId,
  SampleNumber,
  Season,
  SeasonStation,
  StationCode,
} from './sample-number.ts'
import { resultCalls } from './result-calls.ts'
import { PracticeRole, PracticeSpeed } from './practice.ts'
import { LoggerReading } from './readings-file.ts'
import { ReceiptColumns, ReceivedBag, ReceivedCooler } from './receipt.ts'
import { Keeping, StationSettings } from './station.ts'
import { StationItem } from './station-close.ts'
import { HandoffClassed, HandoffPacked } from './transport.ts'
import { MissedReason, TissueCheck, TissueSite } from './tissue.ts'
import { AnimalView, BenchView, TagSeenView } from './views/animal.ts'
import { BoardView } from './views/board.ts'
import { CloseView, HandoverView } from './views/close.ts'
import { ColdView, HoldView, IceView, LoggerLookView, LoggerPreview } from './views/cold.ts'
import { PdfFile, TextFile } from './views/common.ts'
import { CustodyView, ManifestCheckView, ReceiptView } from './views/custody.ts'
import { DiscrepanciesView, DiscrepancyPage, FoundView, MergeView } from './views/merge.ts'
import { CoolerInsideView, CoolersView } from './views/coolers.ts'
import { AheadView, ForecastView } from './views/forecast.ts'
import { SeekView, StoryOf, StoryView } from './views/find.ts'
import { HandoffView, HandoffsView } from './views/handoff.ts'
import { KitsView } from './views/kits.ts'
import { LedgerName, LedgerView } from './views/ledger.ts'
import { LineView } from './views/line.ts'
import { PeopleView, WhoView } from './views/people.ts'
import {
  JamView,
  LabelKind,
  PreviewView,
  PrinterOffset,
  PrintersView,
  PrintingView,
  StockView,
} from './views/printing.ts'
import { LivePracticeView, ScoreView } from './views/practice.ts'
import { BackupView, ContactsView, DrillView, Light } from './views/safekeeping.ts'
import { ShelfView } from './views/shelf.ts'
import { StationCloseView } from './views/station-close.ts'
import { SlipView } from './views/slip.ts'

/** What changed, so that screens know what to ask again. An entry's topic is its kind up to the dot. */
export const Topic = z.enum([
  'backup',
  'contacts',
  'desk',
  'light',
  'tour',
  'practice',
  'shelf',
  'who',
  'station',
  'settings',
  'clock',
  'person',
  'pin',
  'shift',
  'duty',
  'day',
  'kits',
  'kit',
  'labels',
  'label',
  'stock',
  'printing',
  'animal',
  'wait',
  'suggestion',
  'air',
  'tissue',
  'bag',
  'cooler',
  'seal',
  'count',
  'variance',
  'handoff',
  'handover',
  'receipt',
  'office',
  'discrepancy',
  'merge',
  'coverage',
  'outline',
  'results',
  'result',
  'hunter',
  'slip',
])
export type Topic = z.infer<typeof Topic>

const Scan = z.string().min(1).max(80)
const Words = z.string().trim().max(200)
const Why = z.string().trim().min(3, 'say why in a few words').max(200)
const nothing = z.strictObject({})
const done = z.strictObject({})

/** A file as text; a body of the loopback takes no more than a megabyte. */
const FileText = z.string().min(1).max(900_000)
const File = z.string().min(1).max(200)
/** Labels as a PDF, and the printer that they are on their way to, if one is chosen for them. */
const printed = z.strictObject({ pdf: PdfFile, sentTo: z.string().nullable() })

const entriesKept = z.strictObject({ entries: z.int() })

/** Of one station and day; each left out means the latest. */
const StationDayAsked = z.strictObject({
  station: SeasonStation.optional(),
  date: LocalDate.optional(),
})

/** The lead's PIN, and the second person with theirs, or why nobody signs beside the lead. */
const signing = {
  pin: z.string().max(20),
  second: z
    .strictObject({ person: Scan, pin: z.string().max(20) })
    .nullable()
    .default(null),
  aloneBecause: Words.default(''),
}

const crewTopics = ['person', 'duty', 'shift', 'kits', 'kit'] as const
const lineTopics = [
  'animal',
  'tissue',
  'bag',
  'cooler',
  'seal',
  'day',
  'settings',
  'handoff',
  'label',
  'labels',
  'count',
  ...crewTopics,
] as const

const forecastTopics = [...lineTopics, 'wait', 'suggestion', 'air', 'clock'] as const

export const deskApi = {
  // The shelf: which log is open at this desk.
  'shelf.look': query(nothing, ShelfView, ['shelf', 'office']),
  'shelf.open': command(z.strictObject({ file: z.string().min(1).max(200) }), done),
  'shelf.shut': command(nothing, done),
  'station.setUp': command(
    z.strictObject({
      season: Season,
      station: StationCode,
      letter: DeskLetter,
      name: z.string().trim().min(2).max(60),
      zone: Zone,
      date: LocalDate,
      settings: StationSettings,
      lead: z.strictObject({ name: PersonName, pin: Pin }),
      kits: z.int().min(0).max(100_000),
      blankLabels: z.int().min(0).max(1_000_000),
      /** Coolers on ice that stand ready: each is opened under a number, so that its label can be printed. */
      coolers: z.int().min(0).max(50).default(0),
    }),
    z.strictObject({ lead: PersonId }),
  ),
  /** Opens an invented opening morning, part played, for learning. Everyone's PIN is told. */
  'practice.open': command(
    z.strictObject({
      animals: z.int().min(1).max(2000).default(40),
      seed: z.int().min(0).default(1),
    }),
    z.strictObject({ pin: z.string() }),
  ),

  /** One role practised in a live morning: everyone else is simulated, on a clock of its own. */
  'practice.live': command(
    z.strictObject({
      role: PracticeRole,
      speed: PracticeSpeed.default(5),
      animals: z.int().min(5).max(120).default(30),
      seed: z.int().min(0).default(1),
    }),
    z.strictObject({ pin: z.string(), person: PersonId }),
  ),
  'practice.pace': command(z.strictObject({ speed: PracticeSpeed }), done),
  'practice.end': command(nothing, done),
  practice: query(nothing, z.strictObject({ live: LivePracticeView.nullable() }), [
    ...lineTopics,
    'practice',
    'shelf',
  ]),
  'practice.score': query(nothing, ScoreView, [...lineTopics, 'practice', 'shelf']),

  // Safekeeping: backups, the laptop this desk lives on, contacts, the light of the screens
  backup: query(nothing, BackupView, ['backup', 'shelf']),
  'backup.choose': command(z.strictObject({ place: z.string().max(40) }), entriesKept),
  'backup.stop': command(nothing, done),
  'backup.now': command(nothing, entriesKept),
  /** Restores the backup into a folder of its own and checks it from end to end. */
  'backup.drill': command(nothing, DrillView),
  /** Brings a backup back to a shelf on which its log is damaged or missing. */
  'backup.restore': command(z.strictObject({ file: File }), z.strictObject({ file: File })),
  /** Hands the desk over: this copy of the log stops, the one on the stick goes on elsewhere. */
  'desk.moveOut': command(
    z.strictObject({ pin: z.string().max(20) }),
    z.strictObject({ file: File }),
  ),
  /** Goes on here with a log of a laptop that is lost or was moved; a lead stands for it. */
  'desk.takeOver': command(
    z.strictObject({
      file: File,
      pin: z.string().max(20),
      reason: Why,
      passphrase: z.string().max(200).optional(),
    }),
    done,
  ),
  contacts: query(nothing, ContactsView, ['contacts', 'animal', 'shelf']),
  'contacts.setPassphrase': command(
    z.strictObject({ passphrase: Passphrase, keepKeyHere: z.boolean() }),
    done,
  ),
  'contacts.unlock': command(z.strictObject({ passphrase: z.string().max(200) }), done),
  /** Erases contacts for good, and proves that the log still verifies. */
  'contacts.purge': command(
    z.strictObject({
      upTo: LocalDate,
      pin: z.string().max(20),
      /** The person stands by erasing contacts of hunters who were not told yet. */
      sure: z.boolean().default(false),
    }),
    z.strictObject({
      contacts: z.int(),
      /** Nothing of them is left in the log's WAL file either. */
      clean: z.boolean(),
      /** Whether the backup is already without them; null if there is none. */
      backup: z.boolean().nullable(),
      whole: z.boolean(),
      entries: z.int(),
    }),
  ),
  light: query(nothing, z.strictObject({ light: Light.nullable() }), ['light']),
  /** Whether someone was shown round on this laptop. */
  tour: query(nothing, z.strictObject({ taken: z.boolean() }), ['tour']),
  'tour.take': command(z.strictObject({ again: z.boolean().default(false) }), done),
  'light.choose': command(z.strictObject({ light: Light }), done),
  /** What to send to whoever helps; no person, tag or number is in it. */
  report: query(nothing, TextFile, []),
  board: query(nothing, BoardView, ['animal', 'tissue', 'day', 'settings', 'shelf']),

  // People
  who: query(nothing, WhoView, ['who', 'person', 'duty', 'shift', 'day', 'settings', 'shelf']),
  people: query(nothing, PeopleView, ['person', 'duty', 'shift', 'day', 'shelf']),
  'person.signIn': command(z.strictObject({ person: Scan, pin: z.string().max(20) }), done),
  'person.lock': command(nothing, done),
  /** Someone is still at the window, though they only look. */
  'person.here': command(nothing, done),
  'person.add': command(
    z.strictObject({ name: PersonName, role: Role, training: z.array(Training), pin: Pin }),
    z.strictObject({ person: PersonId }),
  ),
  'person.change': command(
    z.strictObject({
      person: Scan,
      name: PersonName,
      role: Role,
      training: z.array(Training),
      active: z.boolean(),
    }),
    done,
  ),
  'person.setPin': command(
    z.strictObject({ person: Scan, ownPin: z.string().max(20), pin: Pin }),
    done,
  ),
  'shift.plan': command(
    z.strictObject({ person: Scan, date: LocalDate, from: TimeOfDay, to: TimeOfDay }),
    done,
  ),
  'duty.change': command(z.strictObject({ person: Scan, duty: Duty }), done),

  // Station and day
  'settings.change': command(z.strictObject({ settings: StationSettings }), done),
  'day.open': command(
    z.strictObject({
      date: LocalDate,
      kits: z.int().min(0).max(100_000),
      blankLabels: z.int().min(0).max(1_000_000),
      /** Kits in stock as counted before the delivery, if anyone counted. */
      stockCounted: z.int().min(0).max(100_000).nullable().default(null),
    }),
    done,
  ),
  'day.reopen': command(z.strictObject({ reason: Why }), done),
  'clock.accept': command(nothing, done),

  // Animals and the line
  'animal.checkIn': command(
    z.strictObject({ facts: AnimalFacts, contact: Contact.nullable() }),
    z.strictObject({
      animal: AnimalNumber,
      noSample: NoSampleReason.nullable(),
      /** Plain warnings that do not stop the check-in, such as a place the laboratory cannot use. */
      warnings: z.array(z.string()),
    }),
  ),
  'animal.amend': command(
    z.strictObject({ animal: Scan, facts: AnimalFacts, reason: Why }),
    z.strictObject({ noSample: NoSampleReason.nullable(), warnings: z.array(z.string()) }),
  ),
  'animal.assign': command(z.strictObject({ animal: Scan, sampler: Scan }), done),
  'animal.putBack': command(z.strictObject({ animal: Scan, reason: Why }), done),
  'animal.leave': command(z.strictObject({ animal: Scan, reason: Why }), done),
  'animal.finish': command(z.strictObject({ animal: Scan }), z.strictObject({ outcome: Outcome })),
  line: query(nothing, LineView, lineTopics),
  /** Who works what next, how long each waits, and how well the waits told have held. */
  forecast: query(nothing, ForecastView, forecastTopics),
  /** The rest of the day, and what more samplers from a time on (null: now) would change. */
  ahead: query(
    z.strictObject({
      extra: z
        .array(z.strictObject({ count: z.int().min(1).max(20), at: TimeOfDay.nullable() }))
        .max(5)
        .default([]),
    }),
    AheadView,
    forecastTopics,
  ),
  /** Tells a hunter at check-in how long it will be; told once, it stays what was told. */
  'wait.tell': command(
    z.strictObject({ animal: Scan }),
    z.strictObject({ lowMinutes: z.int(), highMinutes: z.int() }),
  ),
  /** Sets a suggestion aside: this animal is not suggested to this sampler again. */
  'suggestion.setAside': command(z.strictObject({ animal: Scan, sampler: Scan }), done),
  'air.read': command(z.strictObject({ celsius: z.number().min(-60).max(60) }), done),
  animal: query(z.strictObject({ animal: Scan }), AnimalView, [
    'animal',
    'tissue',
    'bag',
    'kit',
    'label',
    'labels',
    'handoff',
  ]),
  tagSeen: query(z.strictObject({ tag: z.string().max(30) }), TagSeenView, ['animal']),
  bench: query(z.strictObject({ sampler: Scan }), BenchView, lineTopics),

  // Sampling
  'kit.open': command(
    z.strictObject({ animal: Scan, kit: Scan }),
    z.strictObject({ kit: KitNumber }),
  ),
  'tissue.check': command(
    z.strictObject({
      animal: Scan,
      site: TissueSite,
      check: TissueCheck,
      sizeMm: z.number().min(1).max(120).nullable(),
    }),
    z.strictObject({
      /** Whether this tissue may be bagged; if not, `advice` says what to do. */
      good: z.boolean(),
      advice: z.string(),
    }),
  ),
  'tissue.miss': command(
    z.strictObject({ animal: Scan, site: TissueSite, reason: MissedReason, words: Words }),
    done,
  ),
  'bag.seal': command(z.strictObject({ animal: Scan, site: TissueSite, bag: Scan }), done),
  'bag.discard': command(z.strictObject({ bag: Scan, reason: Why }), done),

  /** The last thing the person here did, while it is a slip that they may take back themselves. */
  slip: query(nothing, SlipView, [
    ...forecastTopics,
    'slip',
    'variance',
    'handover',
    'receipt',
    'discrepancy',
  ]),
  /** Takes it back by an amendment; what cannot be taken back goes through the lead. */
  'slip.takeBack': command(nothing, z.strictObject({ say: z.string() })),

  // Kits and labels
  kits: query(nothing, KitsView, [
    'kits',
    'kit',
    'labels',
    'label',
    'person',
    'day',
    'bag',
    'handoff',
    'settings',
  ]),
  /** Every kit label that is good by the log, for looking at and never for sticking on. */
  labelsOnRecord: query(nothing, PdfFile, ['kit', 'labels', 'label', 'bag', 'animal']),
  'kits.move': command(
    z.strictObject({
      from: KitAccount,
      to: KitAccount,
      count: z.int().min(1).max(100_000),
      reason: Words,
    }),
    done,
  ),
  'kit.spoil': command(z.strictObject({ kit: Scan, reason: Why }), done),
  /** Numbers new kits and prints their labels: for one animal, or so many reserved for whoever comes. */
  'labels.printKits': command(
    z.strictObject({
      for: z.discriminatedUnion('whom', [
        z.strictObject({ whom: z.literal('animal'), animal: Scan }),
        z.strictObject({
          whom: z.literal('reserve'),
          count: z.int().min(1).max(300),
          /** Species and date are left to be written by hand. */
          byHand: z.boolean().default(false),
        }),
      ]),
      stock: StockName,
    }),
    printed.extend({ kits: z.array(KitNumber) }),
  ),
  /** Prints the same label once more: the old copy is destroyed, lost or void first. */
  'label.reprint': command(
    z.strictObject({
      number: Scan,
      reason: VoidReason,
      words: Words,
      stock: StockName,
      /** Somebody has destroyed the old copy. */
      destroyed: z.boolean().default(false),
    }),
    printed.extend({ copy: z.int() }),
  ),
  'label.void': command(z.strictObject({ number: Scan, reason: VoidReason, words: Words }), done),
  'labels.printCooler': command(z.strictObject({ cooler: Scan, stock: StockName }), printed),
  'labels.printBadge': command(z.strictObject({ person: Scan, stock: StockName }), printed),
  /** The labels of a run from the last good one on; without one, of the latest run. */
  'labels.jam': query(z.strictObject({ last: Scan.nullable() }), JamView, ['labels', 'label']),
  /** Goes on with a run: `good` labels came out from the first of `last` on, `ruined` ones after them. */
  'labels.goOn': command(
    z.strictObject({
      last: Scan.nullable(),
      good: z.int().min(0).max(1000),
      ruined: z.int().min(0).max(1000),
    }),
    printed.extend({ labels: z.int(), again: z.int() }),
  ),

  // Label stocks and printers
  stocks: query(nothing, z.strictObject({ stocks: z.array(StockView) }), ['stock', 'settings']),
  /** What the labels of a kit look like on a stock, described or being described. */
  'stock.preview': query(z.strictObject({ stock: LabelStock }), PreviewView, ['settings']),
  'stock.describe': command(
    z.strictObject({ stock: LabelStock }),
    z.strictObject({ name: StockName }),
  ),
  'stock.retire': command(z.strictObject({ name: StockName }), done),
  printers: query(nothing, PrintersView, []),
  printing: query(nothing, PrintingView, ['printing']),
  'printing.choose': command(
    z.strictObject({ kind: LabelKind, printer: z.string().nullable(), stock: StockName }),
    done,
  ),
  'printing.offset': command(PrinterOffset.extend({ printer: z.string().nullable() }), done),
  'printing.stop': command(nothing, done),
  'printing.goOn': command(z.strictObject({ printer: z.string().nullable() }), done),
  'printing.calibrate': command(z.strictObject({ kind: LabelKind }), printed),

  // Coolers
  coolers: query(nothing, CoolersView, ['cooler', 'bag', 'seal', 'settings', 'handoff', 'tissue']),
  cooler: query(z.strictObject({ cooler: Scan }), CoolerInsideView, [
    'cooler',
    'bag',
    'seal',
    'settings',
    'handoff',
  ]),
  'cooler.open': command(
    z.strictObject({
      name: z.string().trim().min(1).max(40),
      keeping: Keeping,
      capacity: z.int().min(1).max(5000).nullable(),
    }),
    z.strictObject({ cooler: CoolerNumber }),
  ),
  'bag.place': command(z.strictObject({ bag: Scan, cooler: Scan }), done),
  'bag.takeOut': command(z.strictObject({ bag: Scan, reason: Why }), done),
  'cooler.read': command(
    z.strictObject({
      cooler: Scan,
      celsius: Celsius,
      /** The person was asked about the unit and stands by °C. */
      sure: z.boolean().default(false),
    }),
    z.strictObject({ excursion: z.boolean(), advice: z.string() }),
  ),
  /** The first lines of a logger's file, for a person to say which column is what. */
  'logger.look': query(z.strictObject({ text: FileText }), LoggerLookView, []),
  /** What the file brings by what was said of it. */
  'logger.preview': query(
    z.strictObject({ cooler: Scan, text: FileText, reading: LoggerReading }),
    LoggerPreview,
    ['cooler', 'settings'],
  ),
  'logger.import': command(
    z.strictObject({
      cooler: Scan,
      file: z.string().trim().min(1).max(120),
      text: FileText,
      reading: LoggerReading,
    }),
    z.strictObject({ readings: z.int(), excursions: z.int(), gaps: z.int() }),
  ),
  /** How cold a cooler was: chart, mean kinetic temperature, who was inside an excursion. */
  cold: query(z.strictObject({ cooler: Scan }), ColdView, ['cooler', 'bag', 'settings', 'handoff']),
  /** What must be frozen or delivered next. */
  hold: query(nothing, HoldView, ['cooler', 'bag', 'settings', 'handoff', 'clock']),
  ice: query(
    z.strictObject({
      cooler: Scan,
      iceKg: z.number().min(0.1).max(500),
      ambientC: z.number().min(-40).max(60),
      /** Watts for each degree between outside and ice, as stated or measured; null: fit the readings. */
      wattsPerDegree: z.number().min(0.01).max(50).nullable(),
      tissueKg: z.number().min(0).max(500),
      tissueC: z.number().min(-40).max(60),
    }),
    IceView,
    ['cooler'],
  ),
  /** Who held a bag from when to when. */
  custody: query(z.strictObject({ bag: Scan }), CustodyView, [
    'bag',
    'cooler',
    'seal',
    'handoff',
    'receipt',
    'animal',
  ]),
  /** Custody of a cooler that is not sealed: in view, under lock, or in a secure area. */
  'cooler.keep': command(
    z.strictObject({
      cooler: Scan,
      kept: CoolerKeptBy,
      where: z.string().trim().min(3, 'say where, and who has the key').max(120),
    }),
    done,
  ),
  'cooler.seal': command(z.strictObject({ cooler: Scan, seal: z.string().max(20) }), done),
  'seal.break': command(z.strictObject({ cooler: Scan, reason: Why }), done),

  // Close
  close: query(nothing, CloseView, [...lineTopics, 'variance']),
  'count.enter': command(
    z.strictObject({
      item: CountItem,
      counted: z.int().min(0).max(1_000_000),
      /** The person stands by a number that looks absurd. */
      sure: z.boolean().default(false),
    }),
    done,
  ),
  /** Counts a cooler by scanning every bag in it, so that missing and extra bags are named. */
  'count.scan': command(z.strictObject({ cooler: Scan, bags: z.array(Scan).max(5000) }), done),
  'variance.explain': command(
    z.strictObject({ item: CountItem, reason: VarianceReason, words: Words }),
    done,
  ),
  /** The lead signs with their PIN, and a second person with theirs; alone only for a reason. */
  'day.close': command(z.strictObject(signing), done),
  /** What the next lead should know; what goes over into the next day. */
  'handover.write': command(
    z.strictObject({ words: z.string().trim().min(3, 'say it in a few words').max(600) }),
    done,
  ),
  handover: query(nothing, HandoverView, [...lineTopics, 'handover']),
  /** The close of a station over its desks' own closes; of the latest day unless one is named. */
  stationClose: query(StationDayAsked, StationCloseView, [
    ...lineTopics,
    'variance',
    'station',
    'discrepancy',
    'person',
  ]),
  /** The station close sheet; before it is signed it says so. */
  stationCloseSheet: query(StationDayAsked, PdfFile, ['station', 'day', 'discrepancy']),
  'station.explain': command(
    z.strictObject({
      station: SeasonStation,
      date: LocalDate,
      item: StationItem,
      reason: VarianceReason,
      words: Words,
    }),
    done,
  ),
  /** A lead of the office signs over the desks' closes, and a second person with their own PIN. */
  'station.close': command(
    z.strictObject({ station: SeasonStation, date: LocalDate, ...signing }),
    done,
  ),
  /** The accounts of a ledger, and the entries behind one of them. */
  ledger: query(
    z.strictObject({ ledger: LedgerName, account: z.string().max(60).nullable() }),
    LedgerView,
    lineTopics,
  ),
  /** The one-page guide of a role, to print. */
  guide: query(z.strictObject({ role: GuideFor }), PdfFile, []),
  closeSheet: query(z.strictObject({ date: LocalDate.optional() }), PdfFile, ['day']),

  // Handoff
  handoffs: query(nothing, HandoffsView, ['handoff', 'cooler', 'seal', 'bag', 'receipt']),
  handoff: query(z.strictObject({ handoff: Scan }), HandoffView, [
    'handoff',
    'cooler',
    'seal',
    'bag',
  ]),
  'handoff.begin': command(
    z.strictObject({
      destination: z.string().trim().min(2).max(120),
      coolers: z.array(Scan).min(1),
      /** The handoff of that day whose manifest this one adds to. */
      supplements: Scan.nullable().default(null),
    }),
    z.strictObject({ handoff: HandoffNumber }),
  ),
  'handoff.class': command(HandoffClassed.extend({ handoff: Scan }), done),
  'handoff.pack': command(HandoffPacked.extend({ handoff: Scan }), done),
  'cooler.scanOut': command(
    z.strictObject({
      handoff: Scan,
      cooler: Scan,
      seal: z.string().max(20),
      celsius: Celsius,
      /** The person was asked about the unit and stands by °C. */
      sure: z.boolean().default(false),
      counted: z.int().min(0).max(5000),
      words: Words,
    }),
    done,
  ),
  'handoff.callOff': command(z.strictObject({ handoff: Scan, reason: Why }), done),
  'handoff.sign': command(
    z.strictObject({
      handoff: Scan,
      courier: Courier,
      pin: z.string().max(20),
      leadSignature: Signature,
      courierSignature: Signature,
      /** What is open of packing and class was told, and the lead hands over all the same. */
      asItIs: z.boolean().default(false),
    }),
    z.strictObject({ digest: z.string() }),
  ),
  manifest: query(
    z.strictObject({ handoff: Scan }),
    z.strictObject({ pdf: PdfFile, json: TextFile, csv: TextFile }),
    ['handoff'],
  ),

  /** Puts a signed manifest right; the corrected one names the one that it replaces. */
  'handoff.correct': command(
    z.strictObject({
      handoff: Scan,
      takeOff: z.array(Scan).max(100),
      add: z.array(z.strictObject({ bag: Scan, cooler: Scan })).max(100),
      reason: Why,
      pin: z.string().max(20),
    }),
    z.strictObject({ digest: z.string(), edition: z.int() }),
  ),
  /** Whether paper, file and log agree. A PDF comes as base64. */
  'manifest.check': query(
    z.discriminatedUnion('form', [
      z.strictObject({ form: z.literal('json'), text: FileText }),
      z.strictObject({ form: z.literal('pdf'), base64: FileText }),
    ]),
    ManifestCheckView,
    ['handoff'],
  ),
  receipt: query(z.strictObject({ handoff: Scan }), ReceiptView, ['handoff', 'receipt']),
  /** The counter-scan, by a file or scanned bag by bag. */
  'receipt.count': command(
    z.strictObject({
      handoff: Scan,
      receivedBy: z.string().trim().min(2).max(80),
      counted: z.discriminatedUnion('how', [
        z.strictObject({
          how: z.literal('file'),
          name: z.string().trim().min(1).max(120),
          text: FileText,
          columns: ReceiptColumns,
        }),
        z.strictObject({
          how: z.literal('scanned'),
          bags: z.array(ReceivedBag).max(5000),
          coolers: z.array(ReceivedCooler).max(200),
        }),
      ]),
    }),
    ReceiptView,
  ),

  // Merging, at an office
  'merge.look': query(nothing, MergeView, ['merge', 'shelf', 'office']),
  /** Merges logs of one place into a log of the shelf; answers when it has begun. */
  'merge.begin': command(
    z.strictObject({
      place: z.string().max(300),
      files: z.array(z.string().max(200)).min(1, 'choose at least one file').max(500),
      into: z
        .string()
        .trim()
        .regex(/^[\p{L}\p{N}][\p{L}\p{N} ._-]{0,79}$/u, 'letters, digits, spaces and hyphens'),
    }),
    done,
  ),
  'merge.cancel': command(nothing, done),
  /** An office takes up a merged log of the shelf and opens it. */
  'office.setUp': command(
    z.strictObject({
      file: z.string().min(1).max(200),
      season: Season,
      station: StationCode,
      letter: DeskLetter,
      name: z.string().trim().min(2).max(60),
      zone: Zone,
      lead: z.strictObject({ name: PersonName, pin: Pin }),
    }),
    z.strictObject({ lead: PersonId }),
  ),
  discrepancies: query(DiscrepancyPage, DiscrepanciesView, [
    'discrepancy',
    'receipt',
    'animal',
    'bag',
    'kit',
    'day',
    'handoff',
  ]),
  'discrepancy.settle': command(
    z.strictObject({
      discrepancy: DiscrepancyId,
      choice: SettleChoice,
      side: z.string().min(1).max(80).nullable(),
      words: Words,
    }),
    done,
  ),
  /** Animals found while a number, tag or hunter is typed. */
  find: query(z.strictObject({ text: z.string().max(30) }), FoundView, ['animal']),

  ...resultCalls,
  ...coverageCalls,

  /** Anything whose number, tag, hunter or name begins so; at least two characters. */
  seek: query(z.strictObject({ text: z.string().max(40) }), SeekView, lineTopics),
  /** The entries about anything found, as a timeline. */
  story: query(z.strictObject({ of: StoryOf }), StoryView, lineTopics),

  // Anything scanned, and lists for elsewhere
  number: query(
    z.strictObject({ text: Scan }),
    z.strictObject({
      number: SampleNumber,
      part: Part,
      say: z.string(),
      animal: AnimalNumber.nullable(),
      cooler: CoolerNumber.nullable(),
    }),
    lineTopics,
  ),
  table: query(
    z.strictObject({
      what: z.enum(['animals', 'samples', 'results', 'kits', 'coolers', 'entries']),
      format: z.enum(['csv', 'json']),
      /** With the numbers of hunters and their tags, by which a person can be found. */
      hunters: z.boolean().default(false),
    }),
    TextFile,
    [...lineTopics, 'result'],
  ),
} as const

export type DeskApi = typeof deskApi
export type CallName = keyof DeskApi
export type CommandName = {
  [N in CallName]: DeskApi[N]['is'] extends 'command' ? N : never
}[CallName]
export type QueryName = Exclude<CallName, CommandName>
/** What a caller sends. */
export type CallInput<N extends CallName> = z.input<DeskApi[N]['input']>
/** What the desk works with, parsed. */
export type ParsedInput<N extends CallName> = z.output<DeskApi[N]['input']>
export type CallOutput<N extends CallName> = z.output<DeskApi[N]['output']>

/** Whether a name is one of the contract's own. */
export function isCallName(name: string): name is CallName {
  return Object.hasOwn(deskApi, name)
}

export function isCommandName(name: CallName): name is CommandName {
  return deskApi[name].is === 'command'
}
