import { type SampleNumber, grouped } from '../../shared-types/sample-number.ts'

/** A sample number as people read it out: `26-KRV-A0042-L-7`. */
export function NumberText(props: { number: SampleNumber }) {
  return <span className="numbers number-text">{grouped(props.number)}</span>
}
