/**
 * How a handoff is packed and classed for transport. Published rules and agencies differ on how tissue
 * of hunter-killed animals is classed, so the lead chooses with the carrier; nothing here decides.
 */
import { z } from 'zod'
import { HandoffNumber } from './sample-number.ts'

export const TransportClass = z.enum([
  'exempt-animal-specimen',
  'category-b',
  'as-the-carrier-says',
])
export type TransportClass = z.infer<typeof TransportClass>

export const transportWords: Record<TransportClass, string> = {
  'exempt-animal-specimen': 'Exempt animal specimen',
  'category-b': 'Biological substance, Category B (UN3373)',
  'as-the-carrier-says': 'Otherwise, as the carrier says',
}

/** What speaks for each class, with where it is written; shown side by side, in no order of merit. */
export const transportSources: Record<TransportClass, readonly { say: string; source: string }[]> =
  {
    'exempt-animal-specimen': [
      {
        say: 'Tissue from apparently healthy hunter-killed animals goes as exempt animal specimens.',
        source: 'A wildlife health protocol, Specimen packaging and shipping, 04.02.15',
      },
      {
        say: 'Minimal likelihood that pathogens are present, by professional judgement of history and signs.',
        source:
          'Cornell University, environment health and safety: exempt animal or human specimens',
      },
    ],
    'category-b': [
      {
        say: 'Tissue from sick or dead animals goes as Category B, UN3373.',
        source: 'A wildlife health protocol, Specimen packaging and shipping, 04.02.15',
      },
      {
        say: 'Category B is recommended for all shipments suspected to be infectious.',
        source: 'Texas veterinary diagnostic laboratory, how to ship a sample',
      },
      {
        say: 'The shipper decides; Category B is tissue reasonably believed to contain an agent, shipped for diagnosis.',
        source: 'USDA NVSL, packaging and labeling, 20 March 2024',
      },
    ],
    'as-the-carrier-says': [
      {
        say: 'The carrier or the laboratory may ask for something else, for formalin above all.',
        source: '49 CFR 173.199 for Category B; the carrier’s own terms',
      },
    ],
  }

/** The lead's choice for this handoff, and by it the one offered next time for the same destination. */
export const HandoffClassed = z.strictObject({
  handoff: HandoffNumber,
  transport: TransportClass,
  /** Who at the carrier agreed to it. */
  agreedWith: z.string().trim().min(2).max(80),
  /** The rule or page it rests on. */
  citation: z.string().trim().min(3).max(200),
})
export type HandoffClassed = z.infer<typeof HandoffClassed>

export const PackingStep = z.enum([
  'primary',
  'secondary',
  'absorbent',
  'outer',
  'marks',
  'list',
  'refrigerant',
  'dry-ice',
  'formalin',
])
export type PackingStep = z.infer<typeof PackingStep>

export const PackingAnswer = z.enum(['done', 'does-not-apply', 'not-done'])
export type PackingAnswer = z.infer<typeof PackingAnswer>

export const packingAnswerWords: Record<PackingAnswer, string> = {
  done: 'done',
  'does-not-apply': 'does not apply',
  'not-done': 'not done',
}

/** Each step as the published rules word it; the carrier's and local rules come first. */
export const packingSteps: readonly { step: PackingStep; say: string; source: string }[] = [
  {
    step: 'primary',
    say: 'Each tissue is in a sealed inner bag or jar that does not leak.',
    source: '49 CFR 173.199(a)',
  },
  {
    step: 'secondary',
    say: 'A second leakproof bag or box holds the inner ones, so that nothing gets out of it.',
    source: '49 CFR 173.199(a)',
  },
  {
    step: 'absorbent',
    say: 'Where there is liquid, absorbent lies between inner and second layer, enough for all of it.',
    source: '49 CFR 173.199(b)',
  },
  {
    step: 'outer',
    say: 'The outer cooler is rigid, cushioned inside, and one face is at least 100 by 100 mm.',
    source: '49 CFR 173.199(a); packing instruction 650',
  },
  {
    step: 'marks',
    say: 'Marks are those of the class chosen: UN3373 in a square on its point, sides at least 50 mm, letters at least 6 mm; or the words Exempt animal specimen. A name and telephone that can be asked are outside or on a paper inside.',
    source:
      '49 CFR 173.199(a)(5), packing instruction 650; Cornell University for exempt specimens',
  },
  {
    step: 'list',
    say: 'The manifest lies in a dry sleeve between second layer and outer cooler, or rides with the driver.',
    source: 'none, common practice',
  },
  {
    step: 'refrigerant',
    say: 'Wet ice is outside the second layer and sealed, so that melt water stays in.',
    source: 'Cornell University, exempt specimens; a wildlife health protocol, 04.02.15',
  },
  {
    step: 'dry-ice',
    say: 'Dry ice only if laboratory and carrier agree: the cooler can vent, and UN1845, class 9 and the net mass stand outside.',
    source: '49 CFR 173.217',
  },
  {
    step: 'formalin',
    say: 'Tissue in formalin is apart from ice, at most 30 mL to an inner package, and the carrier knows of it.',
    source: '49 CFR 173.199(a)(9)',
  },
]

/** The checklist as the lead answered it. It is a reminder: the carrier and local rules go before it. */
export const HandoffPacked = z.strictObject({
  handoff: HandoffNumber,
  answers: z
    .array(z.strictObject({ step: PackingStep, answer: PackingAnswer }))
    .min(1)
    .max(PackingStep.options.length),
  /** Net mass in kilograms over all coolers; null where there is none. */
  dryIceKg: z.number().min(0.1).max(200).nullable(),
  words: z.string().trim().max(200),
})
export type HandoffPacked = z.infer<typeof HandoffPacked>
