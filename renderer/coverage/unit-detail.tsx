import { useState } from 'react'
import { ageWords } from '../../shared-types/animal.ts'
import {
  type ClassCoverage,
  coverageWords,
  type FigureName,
  type UnitCoverage,
} from '../../shared-types/views/coverage.ts'
import { Badge } from '../parts/badge.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { Table } from '../parts/table.tsx'
import { useRoving } from '../parts/use-roving.ts'
import { SaveTable } from './save-table.tsx'
import { FigureDialog } from './figure-dialog.tsx'
import { figureRows, herdWords, stateShapes } from './words.ts'

/** One unit and species: its figures, each of which opens, its classes, and what they do not say. */
export function UnitDetail(props: { herd: UnitCoverage; limits: readonly string[] }) {
  const { herd, limits } = props
  const [open, setOpen] = useState<FigureName>()
  return (
    <div className="stack">
      <Panel title={herdWords(herd)}>
        <p>
          <Badge shape={stateShapes[herd.state]}>{coverageWords[herd.state]}</Badge>
        </p>
        {herd.warnings.map((warning) => (
          <Notice key={warning} kind="warn">
            {warning}
          </Notice>
        ))}
        <Figures herd={herd} onOpen={setOpen} />
      </Panel>
      <Panel title="What cannot be concluded">
        <ul className="coverage-limits">
          {limits.map((limit) => (
            <li key={limit}>{limit}</li>
          ))}
        </ul>
      </Panel>
      <Panel title="By sex and age">
        <Classes classes={herd.classes} />
        <div>
          <SaveTable by="class" keyHint="Alt+C" words="Save all classes as CSV" />
        </div>
      </Panel>
      {open && <FigureDialog herd={herd} figure={open} onClose={() => setOpen(undefined)} />}
    </div>
  )
}

function Figures(props: { herd: UnitCoverage; onOpen: (figure: FigureName) => void }) {
  const rows = figureRows(props.herd)
  const roving = useRoving(rows.map(({ figure }) => figure))
  return (
    <ul id="coverage-figures" className="coverage-figures" aria-label="Figures; Enter opens one">
      {rows.map(({ figure, label, value }) => (
        <li key={figure}>
          <button
            {...roving.rowProps(figure)}
            type="button"
            aria-haspopup="dialog"
            onClick={() => props.onOpen(figure)}
          >
            <span>{label}</span>
            <b className="numbers">{value}</b>
          </button>
        </li>
      ))}
    </ul>
  )
}

function Classes({ classes }: { classes: readonly ClassCoverage[] }) {
  if (classes.length === 0) return <p>No animal was checked in.</p>
  return (
    <Table
      caption="By sex and age"
      rows={classes}
      rowKey={({ sex, age }) => `${age} ${sex}`}
      columns={[
        {
          head: 'Class',
          cell: ({ sex, age, counts }) =>
            `${ageWords[age]}, ${sex === 'unknown' ? 'sex unknown' : sex}${counts ? '' : ' (does not count)'}`,
        },
        { head: 'In', isNumber: true, cell: ({ checked }) => checked },
        { head: 'Usable', isNumber: true, cell: ({ usable }) => usable },
        { head: 'Tested', isNumber: true, cell: ({ tested }) => tested },
        { head: 'Det.', isNumber: true, cell: ({ detected }) => detected },
      ]}
    />
  )
}
