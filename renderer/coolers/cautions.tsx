import { Caution } from '../parts/caution.tsx'

/** What can hurt around coolers. Venting and marking after 49 CFR 173.217 (dry ice). */
export function CoolerCautions() {
  return (
    <Caution title="dry ice and formalin">
      <p>
        Dry ice burns skin and fills a closed space with gas: insulated gloves, open air, and never
        an airtight lid. It must be able to vent, in the cooler and in the car. Formalin is
        poisonous: gloves, lids tight. Ask the laboratory whether it takes dry ice. The carrier's
        and local rules go before these lines.
      </p>
      <p>
        <small>Source: 49 CFR 173.217 (dry ice packages must release gas).</small>
      </p>
    </Caution>
  )
}
