import { useId } from 'react'
import './hour-chart.css'
import { Table } from './table.tsx'

/** One column of the picture: what was as a bar, what is expected as a range with its middle. */
export interface ChartPoint {
  readonly label: string
  readonly bar: number | null
  readonly range: { readonly low: number; readonly typical: number; readonly high: number } | null
}

const width = 560
const height = 150
const edge = { left: 44, right: 8, top: 12, bottom: 24 }
const plotHeight = height - edge.top - edge.bottom

/** A round number at or above the largest value, for the top of the scale. */
export function roundTop(largest: number): number {
  const size = 10 ** Math.floor(Math.log10(Math.max(1, largest)))
  const step = [1, 2, 3, 4, 5, 6, 8, 10].find((each) => each * size >= largest) ?? 10
  return Math.max(4, step * size)
}

/**
 * Values over the hours: bars for what was, boxes with a middle stroke for what is expected, a dashed
 * rule for a level to compare with. The same numbers stand in a table below.
 */
export function HourChart(props: {
  title: string
  /** What the picture says, in a sentence: its text alternative, shown above it. */
  say: string
  unit: string
  /** What a bar and a range are called in the table. */
  words: { readonly bar: string; readonly range: string }
  points: readonly ChartPoint[]
  level?: { readonly at: number; readonly words: string }
}) {
  const { points, level } = props
  const id = useId()
  const values = points.flatMap(({ bar, range }) => [bar ?? 0, range?.high ?? 0])
  const top = roundTop(Math.max(level?.at ?? 0, ...values))
  const y = (value: number) => edge.top + plotHeight * (1 - value / top)
  return (
    <figure className="hour-chart" aria-labelledby={id}>
      <figcaption id={id}>
        <h3>
          {props.title} <small>{props.unit}</small>
        </h3>
        <p>{props.say}</p>
      </figcaption>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`${props.title}: ${props.say}`}
      >
        <Scale top={top} y={y} />
        {points.map((point, place) => (
          <Column key={point.label} point={point} place={place} count={points.length} y={y} />
        ))}
        {level && (
          <>
            <line
              className="chart-level"
              x1={edge.left}
              x2={width}
              y1={y(level.at)}
              y2={y(level.at)}
            />
            <text className="chart-words" x={edge.left + 6} y={y(level.at) - 5}>
              {level.words}
            </text>
          </>
        )}
      </svg>
      <details>
        <summary>As a table</summary>
        <Table
          caption={`${props.title}, ${props.unit}`}
          rows={points}
          rowKey={({ label }) => label}
          columns={[
            { head: 'Time', cell: ({ label }) => label },
            { head: props.words.bar, isNumber: true, cell: ({ bar }) => whole(bar) },
            {
              head: props.words.range,
              isNumber: true,
              cell: ({ range }) => range && `${whole(range.low)} to ${whole(range.high)}`,
            },
            {
              head: 'typically',
              isNumber: true,
              cell: ({ range }) => range && whole(range.typical),
            },
          ]}
        />
      </details>
    </figure>
  )
}

function whole(value: number | null): string {
  return value === null ? '' : String(Math.round(value))
}

function Scale(props: { top: number; y: (value: number) => number }) {
  const { top, y } = props
  return (
    <>
      {[0, top / 2, top].map((value) => (
        <g key={value}>
          <line className="chart-grid" x1={edge.left} x2={width} y1={y(value)} y2={y(value)} />
          <text className="chart-words" x={edge.left - 6} y={y(value) + 4} textAnchor="end">
            {value}
          </text>
        </g>
      ))}
    </>
  )
}

function Column(props: {
  point: ChartPoint
  place: number
  count: number
  y: (value: number) => number
}) {
  const { point, place, count, y } = props
  const { label, bar, range } = point
  const step = (width - edge.left - edge.right) / count
  const x = edge.left + step * place
  const every = Math.ceil(count / 8)
  return (
    <g>
      {bar !== null && (
        <rect
          className="chart-bar"
          x={x + step * 0.12}
          width={step * 0.76}
          y={y(bar)}
          height={y(0) - y(bar)}
        />
      )}
      {range && (
        <>
          <rect
            className="chart-range"
            x={x + step * 0.2}
            width={step * 0.6}
            y={y(range.high)}
            height={Math.max(2, y(range.low) - y(range.high))}
          />
          <line
            className="chart-typical"
            x1={x + step * 0.12}
            x2={x + step * 0.88}
            y1={y(range.typical)}
            y2={y(range.typical)}
          />
        </>
      )}
      {place % every === 0 && (
        <text className="chart-words" x={x + step / 2} y={height - 6} textAnchor="middle">
          {label}
        </text>
      )}
    </g>
  )
}
