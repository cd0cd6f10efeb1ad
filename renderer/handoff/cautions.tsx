import { Caution } from '../parts/caution.tsx'

/** How coolers are packed and kept in custody, in short, with where it is written. */
export function HandoffCautions() {
  return (
    <Caution title="packing and custody">
      <ul className="handoff-cautions">
        <li>
          Three layers: sealed bag, leakproof bag around it, rigid cooler. Nothing may leak out.
        </li>
        <li>Where there is liquid, put absorbent between the inner layers.</li>
        <li>Dry ice must vent. By air its net mass stands on the outside.</li>
        <li>
          A seal stays whole until the laboratory breaks it. Keep the coolers in sight or locked up.
        </li>
        <li>
          Carriers and laboratories class these tissues differently. What the carrier, the
          laboratory and local rules ask goes before these lines.
        </li>
      </ul>
      <p>
        <small>
          Sources: 49 CFR 173.199 (three layers, absorbent), 49 CFR 173.217 (dry ice), EPA manual
          905R78115 of 1978 (custody and seals).
        </small>
      </p>
    </Caution>
  )
}
