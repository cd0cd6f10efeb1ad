import type { UnitCoverage } from '../../shared-types/views/coverage.ts'
import { coverageWords } from '../../shared-types/views/coverage.ts'
import { roundTop } from '../parts/hour-chart.tsx'
import { Picture } from './picture.tsx'
import { StateMark } from './state-mark.tsx'

const width = 960
const rowHeight = 34
const edge = { left: 230, right: 96, top: 30, bottom: 8 }

/** Tested and usable animals of each unit against the number its target asks for. */
export function TargetPicture(props: { units: readonly UnitCoverage[]; words: string }) {
  const { units, words } = props
  const largest = units.map(({ counts, proof }) => Math.max(counts.usable, proof?.target ?? 0))
  const top = roundTop(Math.max(1, ...largest))
  const x = (value: number) => edge.left + (value / top) * (width - edge.left - edge.right)
  const size = { width, height: edge.top + edge.bottom + rowHeight * units.length }
  return (
    <Picture
      title={`Samples against the target, ${words}`}
      say={sentence(units)}
      file="coverage-target"
      size={size}
      table={{
        rows: units,
        rowKey: ({ unit }) => unit,
        columns: [
          { head: 'Unit', cell: ({ unit, name }) => `${unit} ${name}` },
          { head: 'State', cell: ({ state }) => coverageWords[state] },
          { head: 'Usable', isNumber: true, cell: ({ counts }) => counts.usable },
          { head: 'Tested', isNumber: true, cell: ({ counts }) => counts.tested },
          { head: 'Target', isNumber: true, cell: ({ proof }) => proof?.target ?? 'none' },
        ],
      }}
    >
      {[0, top / 2, top].map((value) => (
        <g key={value}>
          <line
            className="chart-grid"
            x1={x(value)}
            x2={x(value)}
            y1={edge.top}
            y2={size.height - 4}
          />
          <text className="picture-words" x={x(value)} y={edge.top - 10} textAnchor="middle">
            {value}
          </text>
        </g>
      ))}
      {units.map((herd, place) => (
        <Bar key={herd.unit} herd={herd} x={x} y={edge.top + place * rowHeight} />
      ))}
    </Picture>
  )
}

function sentence(units: readonly UnitCoverage[]): string {
  const short = units.filter(({ proof }) => (proof?.moreToSample ?? 0) > 0)
  if (units.every(({ proof }) => proof === null)) return 'No design is set, so there is no target.'
  if (short.length === 0) return 'Every unit has the samples its target asks for.'
  const named = short.slice(0, 6).map(({ unit, proof }) => `${unit} by ${proof?.moreToSample}`)
  return `${short.length} of ${units.length} units are short: ${named.join(', ')}${short.length > 6 ? ' and more' : ''}. Inner bar: tested. Outer bar: usable. Upright stroke: target.`
}

function Bar(props: { herd: UnitCoverage; x: (value: number) => number; y: number }) {
  const { herd, x, y } = props
  const { counts, proof } = herd
  const target = proof?.target ?? null
  const middle = y + rowHeight / 2
  return (
    <g>
      <StateMark state={herd.state} x={8} y={middle - 7} />
      <text className="picture-words" x={30} y={middle + 5}>
        {herd.unit} {herd.name.slice(0, 20)}
      </text>
      <rect
        className="picture-usable"
        x={x(0)}
        width={x(counts.usable) - x(0)}
        y={y + 7}
        height={rowHeight - 14}
      />
      <rect
        className="picture-tested"
        x={x(0)}
        width={x(counts.tested) - x(0)}
        y={y + 11}
        height={rowHeight - 22}
      />
      {target !== null && (
        <line
          className="picture-target"
          x1={x(target)}
          x2={x(target)}
          y1={y + 3}
          y2={y + rowHeight - 3}
        />
      )}
      <text className="picture-words" x={width - 6} y={middle + 5} textAnchor="end">
        {target === null ? counts.usable : `${counts.usable} of ${target}`}
      </text>
    </g>
  )
}
