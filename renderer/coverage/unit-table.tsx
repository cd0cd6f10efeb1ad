import { speciesWords } from '../../shared-types/animal.ts'
import { coverageWords, type UnitCoverage } from '../../shared-types/views/coverage.ts'
import { Badge } from '../parts/badge.tsx'
import type { Roving } from '../parts/use-roving.ts'
import { chanceText, herdKey, moreText, stateShapes } from './words.ts'

/** A row for each unit and species. Arrow keys walk the rows; the unit chosen opens beside the table. */
export function UnitTable(props: { units: readonly UnitCoverage[]; roving: Roving }) {
  const { units, roving } = props
  return (
    <table className="table coverage-table">
      <caption className="unseen">
        Coverage by unit and species, animals of the ages that count
      </caption>
      <thead>
        <tr>
          <th scope="col">Unit</th>
          <th scope="col">State</th>
          {[
            'Checked in',
            'Sampled',
            'Usable',
            'Tested',
            'Detected',
            'Chance',
            'Still to sample',
          ].map((head) => (
            <th key={head} scope="col" className="table-number">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {units.map((herd) => (
          <Row key={herdKey(herd)} herd={herd} roving={roving} />
        ))}
      </tbody>
    </table>
  )
}

function Row({ herd, roving }: { herd: UnitCoverage; roving: Roving }) {
  const { counts, proof } = herd
  const isShown = roving.chosen === herdKey(herd)
  return (
    <tr className={isShown ? 'coverage-row-shown' : undefined}>
      <th scope="row">
        <button
          {...roving.rowProps(herdKey(herd))}
          type="button"
          className="coverage-unit"
          aria-current={isShown}
          onClick={() =>
            document.getElementById('coverage-figures')?.querySelector('button')?.focus()
          }
        >
          <span>
            <b className="numbers">{herd.unit}</b> {herd.name}
          </span>
          <small>{speciesWords[herd.species]}</small>
        </button>
      </th>
      <td>
        <Badge shape={stateShapes[herd.state]}>{coverageWords[herd.state]}</Badge>
      </td>
      <Figure>{counts.checked}</Figure>
      <Figure>{counts.sampled}</Figure>
      <Figure>{counts.usable}</Figure>
      <Figure>{counts.tested}</Figure>
      <Figure>{counts.detected}</Figure>
      <Figure>{proof === null ? '' : chanceText(proof.detection)}</Figure>
      <Figure>{proof === null ? '' : moreText(proof.moreToSample)}</Figure>
    </tr>
  )
}

function Figure({ children }: { children: string | number }) {
  return <td className="table-number numbers">{children}</td>
}
