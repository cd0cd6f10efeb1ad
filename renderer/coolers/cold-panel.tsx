import type { CoolerNumber } from '../../shared-types/sample-number.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import type { ColdView, ExcursionView } from '../../shared-types/views/cold.ts'
import { useAsk } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Panel } from '../parts/panel.tsx'
import { Time, useZone } from '../parts/time.tsx'
import { formatTime } from '../parts/zoned-time.ts'
import { chartSize, planChart } from './cold-chart.ts'
import './cold-panel.css'
import { bothScales } from './temperature.ts'

/** How cold a cooler was: a chart with its limits, and the same in words. */
export function ColdPanel(props: { cooler: CoolerNumber }) {
  const { data } = useAsk('cold', { cooler: props.cooler })
  if (data === undefined || data.points.length === 0) return null
  return (
    <Panel title="How cold it was">
      <Chart cold={data} />
      <ul className="cold-told">
        <Kinetic cold={data} />
        {data.excursions.map((each) => (
          <Excursion key={each.fromMs} excursion={each} />
        ))}
        {data.excursions.length === 0 && <li>Never read outside its limits.</li>}
        {data.gaps.map((gap) => (
          <li key={gap.fromMs}>
            <Badge shape="idle">no readings</Badge> from <Time ms={gap.fromMs} /> to{' '}
            <Time ms={gap.toMs} />
          </li>
        ))}
      </ul>
    </Panel>
  )
}

function Kinetic(props: { cold: ColdView }) {
  const { kinetic } = props.cold
  if (!kinetic) return null
  return (
    <li>
      Mean kinetic temperature <b className="numbers">{bothScales(kinetic.celsius)}</b> over{' '}
      <b className="numbers">{kinetic.windowHours.toFixed(1)} h</b>; peak{' '}
      <b className="numbers">{bothScales(kinetic.peak)}</b>, <Time ms={kinetic.peakMs} />. It was
      made for the decay of drugs and decides nothing here: the laboratory judges the tissue.
    </li>
  )
}

function Excursion(props: { excursion: ExcursionView }) {
  const { fromMs, toMs, lowest, highest, bags } = props.excursion
  const worst =
    lowest === highest ? bothScales(highest) : `${bothScales(lowest)} to ${bothScales(highest)}`
  return (
    <li>
      <Badge shape="now">out of limits</Badge> <b className="numbers">{worst}</b>, from the reading
      before, <Time ms={fromMs} />,{' '}
      {toMs === null ? (
        'until now'
      ) : (
        <>
          to <Time ms={toMs} />
        </>
      )}
      . Inside then: {bags.length === 0 ? 'no bag' : bags.map(grouped).join(', ')}.
    </li>
  )
}

function Chart(props: { cold: ColdView }) {
  const { cold } = props
  const zone = useZone()
  const plan = planChart(cold)
  if (!plan) return null
  const { x, y, lines, fromMs, toMs } = plan
  const { width, height, left, right, bottom, top } = chartSize
  const { low, high } = cold.limits
  return (
    <svg
      className="cold-chart"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`Temperature from ${formatTime(fromMs, zone)} to ${formatTime(toMs, zone)}, with limits of ${low} and ${high} °C; told in words below`}
    >
      {cold.gaps.map((gap) => (
        <rect
          key={gap.fromMs}
          className="cold-chart-gap"
          x={x(gap.fromMs)}
          y={top}
          width={Math.max(1, x(gap.toMs) - x(gap.fromMs))}
          height={height - top - bottom}
        />
      ))}
      {[low, high].map((limit) => (
        <g key={limit}>
          <line
            className="cold-chart-limit"
            x1={left}
            x2={width - right}
            y1={y(limit)}
            y2={y(limit)}
          />
          <text x={left - 6} y={y(limit) + 4} textAnchor="end">
            {limit} °C
          </text>
        </g>
      ))}
      {lines.map((points) => (
        <polyline key={points} className="cold-chart-line" points={points} />
      ))}
      {cold.points.map(({ ms, celsius, excursion, source }) =>
        excursion ? (
          <path
            key={`${ms} ${celsius}`}
            className="cold-chart-out"
            d={`M${x(ms)} ${y(celsius) - 6}l6 10h-12Z`}
          />
        ) : (
          source === '' && <circle key={`${ms} ${celsius}`} cx={x(ms)} cy={y(celsius)} r="3" />
        ),
      )}
      <text x={left} y={height - 8}>
        {formatTime(fromMs, zone)}
      </text>
      <text x={width - right} y={height - 8} textAnchor="end">
        {formatTime(toMs, zone)}
      </text>
    </svg>
  )
}
