/**
 * An animal's result from the results of its samples. Infection often reaches one side before the other,
 * and the nodes before the obex (Hibler et al. 2003, J Vet Diagn Invest 15(4): an ELISA found 98.3 to
 * 100% of infected animals in the retropharyngeal nodes and 92.1 to 93.3% in the obex), so:
 *
 * 1. Detected, if any sample is detected, whatever the others say.
 * 2. Presumptive, if any is presumptive: a second test decides.
 * 3. Pending, if any is reported as pending, or the programme needs a site that is not reported yet.
 * 4. Not detected, only if a suitable lymph node was tested, on either side, and the obex too where the
 *    programme needs it. An obex alone is enough only where the programme says so.
 * 5. Unsuitable, if samples were reported and none of this holds: no result can be given.
 *
 * Steps 2 to 5 and their order: common practice, no source.
 */
import type { ObexRule, ResultWord } from '../../shared-types/laboratory-result.ts'
import type { TissueSite } from '../../shared-types/tissue.ts'

export interface SiteResult {
  readonly site: TissueSite
  readonly word: ResultWord
}

export interface AnimalResult {
  /** Null while no sample was reported. */
  readonly word: ResultWord | null
  /** Why, in one sentence. */
  readonly because: string
}

const isNode = ({ site }: SiteResult) => site !== 'obex'

/** The result of an animal. `samples`: the latest result of each of its samples, in any order. */
export function animalResult(samples: readonly SiteResult[], obex: ObexRule): AnimalResult {
  const has = (word: ResultWord, of = samples) => of.some((each) => each.word === word)
  if (samples.length === 0) return said(null, 'No sample of this animal was reported yet.')
  if (has('detected')) return said('detected', detectedIn(samples))
  if (has('presumptive'))
    return said('presumptive', 'A screening test reacted; a second test decides.')
  if (has('pending')) return said('pending', 'A sample is still being tested.')
  const nodeClear = has('not-detected', samples.filter(isNode))
  const obexes = samples.filter((each) => !isNode(each))
  const obexClear = has('not-detected', obexes)
  if (nodeClear && obex === 'needed' && !obexClear) return obexStillNeeded(obexes)
  if (nodeClear) return said('not-detected', 'A suitable lymph node was tested.')
  if (obexClear && obex === 'enough')
    return said('not-detected', 'The obex was tested, which this programme takes as enough.')
  if (obexClear) return obexAlone(samples)
  return said('unsuitable', 'No suitable tissue was tested, so no result can be given.')
}

function said(word: ResultWord | null, because: string): AnimalResult {
  return { word, because }
}

function detectedIn(samples: readonly SiteResult[]): string {
  const found = samples.filter(({ word }) => word === 'detected').length
  return found === samples.length
    ? 'Every sample that was tested is detected.'
    : 'One sample is enough, whatever the others say.'
}

function obexStillNeeded(obexes: readonly SiteResult[]): AnimalResult {
  return obexes.length === 0
    ? said('pending', 'The node is clear; this programme needs the obex too.')
    : said(
        'unsuitable',
        'The node is clear, but the obex this programme needs could not be tested.',
      )
}

function obexAlone(samples: readonly SiteResult[]): AnimalResult {
  return samples.some(isNode)
    ? said('unsuitable', 'Only the obex could be tested, which is not enough by this programme.')
    : said('pending', 'Only the obex was reported; by this programme a node is needed too.')
}

/** Whether a result says that the animal was tested: what coverage counts. */
export function isTested(word: ResultWord | null): boolean {
  return word === 'not-detected' || word === 'detected' || word === 'presumptive'
}

/** Whether a hunter can be told it as the end of the matter. */
export function isFinal(word: ResultWord | null): boolean {
  return word === 'not-detected' || word === 'detected' || word === 'unsuitable'
}
