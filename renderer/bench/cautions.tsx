import { Caution } from '../parts/caution.tsx'

/**
 * Gloves, brain and spine, no household knives: CDC, cdc.gov/prions/cwd/prevention.html.
 * The blade: common practice, no source.
 */
export function BladeCaution() {
  return (
    <Caution title="blade and gloves">
      <p>
        Cut away from the hand that holds, with a cut-resistant glove under the other. Gloves and
        eye protection on; keep off brain and spine; no knives from home (CDC). Local rules come
        first.
      </p>
    </Caution>
  )
}

/**
 * Five minutes in a 40% dilution of household bleach, which does not work inside solid tissue:
 * Williams K et al. 2019, PLoS ONE 14(10): e0223659. Other programmes mix otherwise: Mississippi
 * WFP's plan has 2% bleach (mdwfp.com/media/254600). Air and mixing: common practice, no source.
 */
export function BleachCaution() {
  return (
    <Caution title="tools before the next animal">
      <p>
        Take all tissue off first: bleach does not reach into it. Then 5 minutes in 2 parts
        household bleach to 3 parts water (Williams 2019), and rinse. Some programmes mix it
        otherwise: yours comes first. Bleach burns: gloves, eye protection, open air, nothing else
        mixed in.
      </p>
    </Caution>
  )
}
