import { Caution } from '../parts/caution.tsx'

/** What can hurt around coolers. That dry ice must vent: 49 CFR 173.217. */
export function CoolerCautions() {
  return (
    <Caution title="dry ice, formalin">
      <p>
        Dry ice: insulated gloves, open air, a lid that lets gas out, in the car too. Formalin:
        gloves, lids tight. What the carrier, the laboratory and local rules ask comes first.
      </p>
      <p>
        <small>Source: 49 CFR 173.217 (dry ice must vent).</small>
      </p>
    </Caution>
  )
}
