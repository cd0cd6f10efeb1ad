import type { Folds } from './fold.ts'
import { kitTransfer } from './kits.ts'
import { patch, put } from './row-write.ts'

/** Coolers on their way to the courier, and gone. */
export const handoffFolds = {
  'handoff.begun': ({ at, body }) => [
    put('handoff', {
      handoff: body.handoff,
      destination: body.destination,
      state: 'loading',
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
