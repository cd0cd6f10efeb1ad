import type { CoverageTimesView } from '../../shared-types/views/coverage.ts'
import { roundTop } from '../parts/hour-chart.tsx'
import { formatDate } from '../parts/zoned-time.ts'
import { Picture } from './picture.tsx'

const size = { width: 960, height: 260 }
const edge = { left: 60, right: 12, top: 16, bottom: 34 }

/** Animals sampled and tested so far, by day: lines that only rise. */
export function DaysPicture({ days }: { days: CoverageTimesView['days'] }) {
  const sums = runningSums(days)
  const last = sums.at(-1)
  if (!last) return null
  const top = roundTop(Math.max(last.sampled, last.tested))
  const first = dayNumber(sums[0]?.date ?? last.date)
  const span = Math.max(1, dayNumber(last.date) - first)
  const x = (date: string) =>
    edge.left + ((dayNumber(date) - first) / span) * (size.width - edge.left - edge.right)
  const y = scale(top)
  const line = (of: 'sampled' | 'tested') =>
    sums.map((sum) => `${x(sum.date).toFixed(1)},${y(sum[of]).toFixed(1)}`).join(' ')
  return (
    <Picture
      title="Animals sampled and tested over time"
      say={`${last.sampled} sampled and ${last.tested} tested by ${formatDate(last.date)}. Thick line: sampled. Dashed line: tested, by the laboratory's date.`}
      file="coverage-over-time"
      size={size}
      table={{
        rows: sums,
        rowKey: ({ date }) => date,
        columns: [
          { head: 'Day', cell: ({ date }) => formatDate(date) },
          { head: 'Sampled so far', isNumber: true, cell: ({ sampled }) => sampled },
          { head: 'Tested so far', isNumber: true, cell: ({ tested }) => tested },
        ],
      }}
    >
      <Levels top={top} />
      <polyline className="picture-sampled-line" points={line('sampled')} />
      <polyline className="picture-tested-line" points={line('tested')} />
      {sums
        .filter((sum) => sum.isSampling)
        .map(({ date, sampled }) => (
          <circle key={date} className="picture-dot" cx={x(date)} cy={y(sampled)} r={4} />
        ))}
      <text className="picture-words" x={edge.left} y={size.height - 8}>
        {formatDate(sums[0]?.date ?? last.date)}
      </text>
      <text
        className="picture-words"
        x={size.width - edge.right}
        y={size.height - 8}
        textAnchor="end"
      >
        {formatDate(last.date)}
      </text>
    </Picture>
  )
}

function runningSums(days: CoverageTimesView['days']) {
  let [sampled, tested] = [0, 0]
  return days.map((day) => {
    sampled += day.sampled
    tested += day.tested
    return { date: day.date, sampled, tested, isSampling: day.sampled > 0 }
  })
}

const dayNumber = (date: string) => Date.parse(`${date}T00:00:00Z`) / 86_400_000

function scale(top: number) {
  const height = size.height - edge.top - edge.bottom
  return (value: number) => edge.top + height * (1 - value / top)
}

function Levels({ top }: { top: number }) {
  const y = scale(top)
  return (
    <>
      {[0, top / 2, top].map((value) => (
        <g key={value}>
          <line className="chart-grid" x1={edge.left} x2={size.width} y1={y(value)} y2={y(value)} />
          <text className="picture-words" x={edge.left - 8} y={y(value) + 5} textAnchor="end">
            {value}
          </text>
        </g>
      ))}
    </>
  )
}

/** Samples by the days from the courier's signature to the result. */
export function TurnaroundPicture({ times }: { times: CoverageTimesView }) {
  const { turnaround, medianDays, waiting } = times
  const most = Math.max(0, ...turnaround.map(({ samples }) => samples))
  const longest = turnaround.at(-1)?.days ?? 0
  const top = roundTop(most)
  const y = scale(top)
  const step = (size.width - edge.left - edge.right) / (longest + 1)
  return (
    <Picture
      title="Days from the courier to the result"
      say={`${medianDays === null ? 'No result has come back yet' : `Half of the samples were reported within ${medianDays} days`}; ${waiting} given to a courier are not reported.`}
      file="coverage-turnaround"
      size={size}
      table={{
        rows: turnaround,
        rowKey: ({ days }) => String(days),
        columns: [
          { head: 'Days', cell: ({ days }) => days },
          { head: 'Samples', isNumber: true, cell: ({ samples }) => samples },
        ],
      }}
    >
      <Levels top={top} />
      {turnaround.map(({ days, samples }) => (
        <rect
          key={days}
          className="picture-tested"
          x={edge.left + days * step + Math.min(2, step * 0.1)}
          width={Math.max(1, step - Math.min(4, step * 0.2))}
          y={y(samples)}
          height={y(0) - y(samples)}
        />
      ))}
      <text
        className="picture-words"
        x={edge.left + step / 2}
        y={size.height - 8}
        textAnchor="middle"
      >
        0
      </text>
      <text
        className="picture-words"
        x={edge.left + (longest + 0.5) * step}
        y={size.height - 8}
        textAnchor="end"
      >
        {longest} days
      </text>
    </Picture>
  )
}
