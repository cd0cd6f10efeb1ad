import { z } from 'zod'
import { BagNumber, CoolerNumber, DeskId, HandoffNumber } from '../sample-number.ts'
import { Ms } from './common.ts'

/** EPA Region V manual 905R78115 (1978): in possession, in view, locked, in a secure area, or sealed. */
export const CustodyBy = z.enum([
  'possession',
  'view',
  'locked',
  'secure-area',
  'sealed',
  'handed-over',
  'ended',
])
export type CustodyBy = z.infer<typeof CustodyBy>

export const CustodyStep = z.strictObject({
  fromMs: Ms,
  /** Null while it lasts. */
  toMs: Ms.nullable(),
  holder: z.string(),
  by: CustodyBy,
  /** The seal it was under. */
  seal: z.string().nullable(),
  words: z.string(),
  /** Struck through, with the initials and date of whoever did; never erased. */
  struck: z.strictObject({ initials: z.string(), ms: Ms, reason: z.string() }).nullable(),
})
export type CustodyStep = z.infer<typeof CustodyStep>

export const CustodyView = z.strictObject({
  bag: BagNumber,
  steps: z.array(CustodyStep),
  /** What breaks the chain, one sentence each; empty when it has no hole. */
  holes: z.array(z.string()),
  /** Facts put right later: as they were, as they are. */
  corrections: z.array(
    z.strictObject({
      ms: Ms,
      what: z.string(),
      was: z.string(),
      is: z.string(),
      initials: z.string(),
      reason: z.string(),
    }),
  ),
})
export type CustodyView = z.infer<typeof CustodyView>

/** Whether paper, file and log agree. */
export const ManifestCheckView = z.strictObject({
  form: z.enum(['pdf', 'json']),
  handoff: HandoffNumber.nullable(),
  desk: DeskId.nullable(),
  state: z.enum(['agrees', 'replaced', 'differs', 'not-in-this-log']),
  say: z.string(),
  next: z.string(),
  /** The digest printed, the one the file's own data gives, and the log's; null where there is none. */
  digests: z.strictObject({
    stated: z.string().nullable(),
    computed: z.string().nullable(),
    log: z.string().nullable(),
  }),
  findings: z.array(z.strictObject({ say: z.string(), bag: BagNumber.nullable() })),
  /** Every cooler the paper or file lists, with the seal it left under. */
  coolers: z.array(z.strictObject({ cooler: CoolerNumber, name: z.string(), seal: z.string() })),
  /** Every bag the paper or file lists, with its cooler, for the counter-scan. */
  bags: z.array(
    z.strictObject({ bag: BagNumber, cooler: z.string(), side: z.string(), seal: z.string() }),
  ),
})
export type ManifestCheckView = z.infer<typeof ManifestCheckView>

export const ReceiptFinding = z.strictObject({
  what: z.enum(['missing', 'extra', 'damaged', 'seal']),
  bag: BagNumber.nullable(),
  say: z.string(),
})
export type ReceiptFinding = z.infer<typeof ReceiptFinding>

export const ReceiptView = z.strictObject({
  handoff: HandoffNumber,
  expected: z.array(BagNumber),
  /** The latest counter-scan; null while none came back. */
  counted: z
    .strictObject({
      ms: Ms,
      receivedBy: z.string(),
      file: z.string().nullable(),
      bags: z.int(),
      enteredBy: z.string(),
    })
    .nullable(),
  findings: z.array(ReceiptFinding),
})
export type ReceiptView = z.infer<typeof ReceiptView>
