import type { Folds } from './fold.ts'
import { kitTransfer } from './kits.ts'
import { patch, put, type RowWrite } from './row-write.ts'
import type { ManifestStroke } from '../../shared-types/manifest.ts'
import type { HandoffNumber } from '../../shared-types/sample-number.ts'

/** Coolers on their way to the courier, and gone. */
export const handoffFolds = {
  'handoff.begun': ({ at, body }) => [
    put('handoff', {
      handoff: body.handoff,
      destination: body.destination,
      state: 'loading',
      supplements: body.supplements,
      begun_ms: at.wall,
    }),
    ...body.coolers.flatMap((cooler) => [
      put('handoff_cooler', { handoff: body.handoff, cooler, words: '' }),
      patch('cooler', { cooler }, { handoff: body.handoff }),
    ]),
  ],
  'cooler.scanned-out': ({ at, body }) => [
    put('handoff_cooler', {
      handoff: body.handoff,
      cooler: body.cooler,
      seal: body.seal,
      celsius: body.celsius,
      counted: body.counted,
      expected: body.expected,
      words: body.words,
      scanned_ms: at.wall,
    }),
  ],
  'handoff.called-off': ({ body }) => [
    patch('handoff', { handoff: body.handoff }, { state: 'called-off' }),
    patch('cooler', { handoff: body.handoff }, { handoff: null }),
  ],
  'handoff.classed': ({ body }) => [
    patch('handoff', { handoff: body.handoff }, { classed: JSON.stringify(body) }),
  ],
  'handoff.packed': ({ body }) => [
    patch('handoff', { handoff: body.handoff }, { packed: JSON.stringify(body) }),
  ],
  'handoff.corrected': (entry) => {
    const { handoff, manifest, digest, kits, kitsBack } = entry.body
    const net = kits.length - kitsBack.length
    return [
      patch('handoff', { handoff }, { manifest: JSON.stringify(manifest), digest }),
      ...(manifest.corrections.at(-1)?.strokes ?? []).map((stroke) => struck(handoff, stroke)),
      ...(net > 0 ? kitTransfer(entry, { in: 'used' }, { in: 'sent' }, net) : []),
      ...(net < 0 ? kitTransfer(entry, { in: 'sent' }, { in: 'used' }, -net) : []),
    ]
  },
  'receipt.counted': ({ hash, at, by, body }) => [
    put('receipt', {
      hash,
      handoff: body.handoff,
      body: JSON.stringify(body),
      ms: at.wall,
      by,
    }),
  ],
  'handoff.signed': (entry) => {
    const { handoff, manifest, kits } = entry.body
    return [
      patch(
        'handoff',
        { handoff },
        {
          state: 'signed',
          signed_ms: entry.at.wall,
          manifest: JSON.stringify(manifest),
          lead_signature: JSON.stringify(entry.body.leadSignature),
          courier_signature: JSON.stringify(entry.body.courierSignature),
          digest: entry.body.digest,
        },
      ),
      ...manifest.coolers.flatMap(({ cooler, bags }) => [
        patch('cooler', { cooler }, { state: 'handed-off' }),
        ...bags.map(({ bag }) => patch('bag', { bag }, { place: 'handed-off', handoff })),
      ]),
      ...(kits.length === 0 ? [] : kitTransfer(entry, { in: 'used' }, { in: 'sent' }, kits.length)),
    ]
  },
} satisfies Partial<Folds>

/** A bag taken off the manifest is back on the bench; one added has left after all. */
function struck(handoff: HandoffNumber, { bag, cooler, what }: ManifestStroke): RowWrite {
  return what === 'added'
    ? patch('bag', { bag }, { place: 'handed-off', cooler, handoff })
    : patch('bag', { bag }, { place: 'bench', cooler: null, handoff: null })
}
