/** Where each figure of the coverage screen comes from: formula, numbers put in, source, caution. */
import type { CoveragePlan } from '../../../shared-types/coverage.ts'
import type { FigureName, FigureView, UnitCoverage } from '../../../shared-types/views/coverage.ts'
import { infectedAtDesign } from '../detection.ts'
import { whoCounts } from './need-words.ts'
import { herdOf } from './proof.ts'

/** A unit with the plan it is judged by. */
interface Judged {
  readonly of: UnitCoverage
  readonly plan: CoveragePlan | null
}
type Put = FigureView['put'][number]

const notRandom =
  'Counts animals as if they were drawn at random from the herd; hunters bring them, so the truth is likely lower.'

/** "95.3%", and never 100% for less than certainty. */
export function probabilityText(value: number): string {
  const text = (value * 100).toFixed(1)
  return text === '100.0' && value < 1 ? 'over 99.9%' : `${text}%`
}

/** "1.23%". */
export function percentText(share: number): string {
  return `${(share * 100).toFixed(2)}%`
}

/** The figure of a unit; null where this unit has none by that name. */
export function figureOf(name: FigureName, judged: Judged): FigureView | null {
  return makers[name](judged)
}

type Maker = (judged: Judged) => FigureView | null

const makers: Record<FigureName, Maker> = {
  harvested: ({ of }) =>
    of.harvested === null
      ? null
      : {
          title: 'Harvested',
          value: String(of.harvested),
          formula: 'As the office entered it',
          put: [],
          source: 'The office, in the coverage plan of this record.',
          caution: 'A harvest estimate is often corrected after the season.',
        },
  checked: counted(
    'Checked in',
    'checked',
    'Animals of this unit and species checked in, of the ages that count; a check-in that was taken back is not among them',
    'An animal that was never brought to a station is not in it.',
  ),
  sampled: counted(
    'Sampled',
    'sampled',
    'Animals with at least one sealed bag that was not discarded, or with a result',
    'An animal counts once, however many bags it has.',
  ),
  usable: counted(
    'Usable',
    'usable',
    'Animals with a lymph node or obex in a sealed bag, and not found unsuitable by the laboratory',
    'Until the laboratory has looked, it is what the sampler saw on the cut face.',
  ),
  tested: counted(
    'Tested',
    'tested',
    'Animals whose result is not detected, detected or presumptive',
    'Pending and unsuitable animals are not in it.',
  ),
  detected: counted(
    'Detected',
    'detected',
    'Animals of which at least one sample was reported as detected',
    'What follows is for the agency and its veterinarian to say.',
  ),
  detection: (judged) => detectionFigure(judged, 'tested'),
  'detection-in-hand': (judged) => detectionFigure(judged, 'usable'),
  needed: neededFigure,
  'to-sample': toSampleFigure,
  prevalence: ({ of }) =>
    of.prevalence && {
      title: 'Share detected',
      value: percentText(of.prevalence.share),
      formula: 'x / n',
      put: shareInputs(of),
      source: 'The plain share; no adjustment for the sensitivity of the test.',
      caution: 'A share among animals tested, which hunters chose: no share of the herd.',
    },
  wilson: ({ of }) =>
    of.prevalence && {
      title: '95% interval, Wilson',
      value: intervalText(of.prevalence.wilson),
      formula: '(p + z²/2n ± z √(p(1 − p)/n + z²/4n²)) / (1 + z²/n), with p = x/n',
      put: [...shareInputs(of), { sign: 'z', is: '1.960', from: '95%, two-sided' }],
      source:
        'Wilson 1927, J Am Stat Assoc 22:209-212; method 3 of Newcombe 1998, Statistics in Medicine 17:857-872.',
      caution: notRandom,
    },
  exact: ({ of }) =>
    of.prevalence && {
      title: '95% interval, exact',
      value: intervalText(of.prevalence.exact),
      formula:
        'low: 2.5% quantile of Beta(x, n − x + 1); high: 97.5% quantile of Beta(x + 1, n − x)',
      put: shareInputs(of),
      source:
        'Clopper & Pearson 1934, Biometrika 26:404-413; method 5 of Newcombe 1998, Statistics in Medicine 17:857-872.',
      caution: `${notRandom} It is wider than it need be, never narrower than it promises.`,
    },
  'at-most': ({ of }) =>
    of.atMost === null
      ? null
      : {
          title: 'None detected: at most',
          value: percentText(of.atMost),
          formula: '95% quantile of Beta(1, n), which is 1 − 0.05^(1/n)',
          put: [{ sign: 'n', is: String(of.counts.tested), from: 'animals tested' }],
          source: 'One-sided bound of Clopper & Pearson 1934, Biometrika 26:404-413.',
          caution: `${notRandom} Takes the test for perfect.`,
        },
  points: pointsFigure,
}

function counted(
  title: string,
  stage: 'checked' | 'sampled' | 'usable' | 'tested' | 'detected',
  formula: string,
  caution: string,
): Maker {
  return ({ of, plan }) => ({
    title,
    value: String(of.counts[stage]),
    formula,
    put: of.classes
      .filter(({ counts }) => counts)
      .map((each) => ({
        sign: `${each.age}, ${each.sex === 'unknown' ? 'sex unknown' : each.sex}`,
        is: String(each[stage]),
        from: 'the record',
      })),
    source: `Counted in this log; ages that count: ${whoCounts(plan?.ages ?? ['young', 'yearling', 'adult'], 2)}.`,
    caution,
  })
}

function shareInputs({ counts }: UnitCoverage): Put[] {
  return [
    { sign: 'x', is: String(counts.detected), from: 'animals detected' },
    { sign: 'n', is: String(counts.tested), from: 'animals tested' },
  ]
}

function intervalText({ low, high }: { low: number; high: number }): string {
  return `${percentText(low)} to ${percentText(high)}`
}

function designInputs({ design }: CoveragePlan): Put[] {
  return [
    { sign: 'p', is: percentText(design.prevalence), from: 'design prevalence, set by the office' },
    { sign: 's', is: String(design.sensitivity), from: 'test sensitivity, set by the office' },
  ]
}

function herdInputs(of: UnitCoverage, plan: CoveragePlan): Put[] {
  const herd = herdOf(of.population, of.counts)
  if (herd === null || of.proof?.method === 'binomial')
    return [
      {
        sign: 'N',
        is: 'without end',
        from: herd === null ? 'no estimate that fits' : 'a large herd',
      },
    ]
  const infected = infectedAtDesign(herd, plan.design.prevalence)
  return [
    { sign: 'N', is: String(herd), from: 'herd, estimated by the office' },
    { sign: 'D', is: String(infected), from: 'infected at the design prevalence: N p, rounded up' },
  ]
}

const formulas = {
  hypergeometric: {
    formula:
      '1 − sum over x of C(D, x) C(N − D, n − x) / C(N, n) × (1 − s)^x: x infected among those tested, and the test misses them all',
    source:
      'Exact hypergeometric with an imperfect test: Cameron & Baldock 1998, Preventive Veterinary Medicine 34:1-17; with a perfect test as in Cannon & Roe 1982, Livestock Disease Surveys.',
  },
  binomial: {
    formula: '1 − (1 − p s)^n',
    source:
      'Binomial, for a large herd or one that nobody has counted: Cannon & Roe 1982, Livestock Disease Surveys (from memory); Fosgate 2009, J Vet Diagn Invest 21:3-14.',
  },
} as const

function detectionFigure({ of, plan }: Judged, stage: 'tested' | 'usable'): FigureView | null {
  if (of.proof === null || plan === null) return null
  const { method, detection, detectionInHand } = of.proof
  return {
    title:
      stage === 'tested'
        ? 'Probability of detection'
        : 'Probability of detection, all usable samples',
    value: probabilityText(stage === 'tested' ? detection : detectionInHand),
    ...formulas[method],
    put: [
      { sign: 'n', is: String(of.counts[stage]), from: `animals ${stage}` },
      ...designInputs(plan),
      ...herdInputs(of, plan),
    ],
    caution:
      stage === 'tested'
        ? `${notRandom} Had the disease been in ${percentText(plan.design.prevalence)} of the herd, at least one animal would have shown it with this probability.`
        : 'As if each usable sample were tested and clear: what can be reached, not what is proved.',
  }
}

function neededFigure({ of, plan }: Judged): FigureView | null {
  if (of.proof === null || plan === null) return null
  const { needed, method } = of.proof
  return {
    title: 'Still to be tested',
    value: needed
      .map(({ confidence, more }) => `${more ?? 'not reachable'} for ${percentOf(confidence)}`)
      .join(', '),
    formula: `The smallest n for which ${formulas[method].formula} reaches the confidence, less those tested`,
    put: [
      ...needed.map(({ confidence, total }) => ({
        sign: `n at ${percentOf(confidence)}`,
        is: total === null ? 'the whole herd is not enough' : String(total),
        from: 'rounded up: published goals that rounded down miss the confidence by a little',
      })),
      { sign: 'tested', is: String(of.counts.tested), from: 'this log' },
      ...designInputs(plan),
      ...herdInputs(of, plan),
    ],
    source: `${formulas[method].source} Tables made by the approximation of MacDiarmid 1988 ask for up to three more.`,
    caution: notRandom,
  }
}

function toSampleFigure({ of, plan }: Judged): FigureView | null {
  if (of.proof === null || plan === null) return null
  const { target, moreToSample } = of.proof
  return {
    title: 'Still to sample',
    value: moreToSample === null ? 'not reachable' : String(moreToSample),
    formula: 'target − usable samples, never less than none',
    put: [
      {
        sign: 'target',
        is: target === null ? 'the whole herd is not enough' : String(target),
        from:
          of.goal === null
            ? `animals to be tested for ${percentOf(plan.design.confidence)}`
            : 'samples to take here, set by the office',
      },
      { sign: 'usable', is: String(of.counts.usable), from: 'this log' },
    ],
    source: 'Counted in this log; the target as the figure “Still to be tested” has it.',
    caution:
      'Takes every usable sample for one that will be tested and clear. What other stations took is in it only after their logs are merged.',
  }
}

/** "95%", "99.5%". */
export function percentOf(confidence: number): string {
  return `${Number((confidence * 100).toFixed(1))}%`
}

function pointsFigure({ of, plan }: Judged): FigureView | null {
  const weighted = of.proof?.weighted ?? null
  if (weighted === null || plan === null) return null
  return {
    title: 'Points, by the weights of the office',
    value: `${Number(weighted.points.toFixed(2))}, detection ${probabilityText(weighted.detection)}`,
    formula: 'points = sum of w n; detection = 1 − product over classes of (1 − w p s)^n',
    put: [
      ...of.classes.map((each) => ({
        sign: `${each.age}, ${each.sex === 'unknown' ? 'sex unknown' : each.sex}`,
        is: each.weight === null ? 'no weight' : `w = ${each.weight}, n = ${each.tested}`,
        from: 'weight by the office, tested in this log',
      })),
      ...designInputs(plan),
    ],
    source:
      'Weighted surveillance: Walsh (editor) 2012, US Geological Survey Open-File Report 2012-1036; Jennelle et al. 2018, Journal of Applied Ecology. The weights are the programme’s own.',
    caution: `${notRandom} p is the prevalence of the class whose weight is 1; the herd counts as without end.`,
  }
}
