import { AgeClass, ageWords } from '../../shared-types/animal.ts'
import { JawDrawing } from './jaw-drawing.tsx'

const criteria: Record<AgeClass, string> = {
  young: 'Fewer than 6 cheek teeth.',
  yearling: '6; the third has three cusps, or is new and white with two.',
  adult: '6; the third has two cusps, stained and worn like the rest.',
}

/** How to read the age class from the lower jaw. */
export function JawAid({ chosen }: { readonly chosen: AgeClass | null }) {
  return (
    <div className="jaw-aid">
      <p>With gloves on, count the cheek teeth of one side.</p>
      <ul>
        {AgeClass.options.map((age) => (
          <li key={age} data-chosen={age === chosen}>
            <JawDrawing age={age} />
            <p>
              <strong>{ageWords[age]}</strong>
              {age === chosen && ' (chosen)'}
            </p>
            <p>{criteria[age]}</p>
          </li>
        ))}
      </ul>
      <p className="small-print">
        Deer, after Indiana DNR (in.gov/dnr/fishwild/2737.htm); drawings ours. Elk, moose: local
        chart.
      </p>
    </div>
  )
}
