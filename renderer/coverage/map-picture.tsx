import type {
  CoverageState,
  CoverageView,
  UnitCoverage,
} from '../../shared-types/views/coverage.ts'
import { coverageWords } from '../../shared-types/views/coverage.ts'
import { planMap } from './map-plan.ts'
import { Picture } from './picture.tsx'
import { StateMark } from './state-mark.tsx'
import { stateShapes } from './words.ts'

const width = 960
const keyHeight = 44

/** The units on the map with how each stands; only where the office supplied outlines. */
export function MapPicture(props: {
  outlines: CoverageView['outlines']
  units: readonly UnitCoverage[]
  words: string
}) {
  const { outlines, units, words } = props
  const plan = planMap(outlines, width, 520)
  if (plan === null)
    return (
      <p>
        No map: the office has supplied no outlines of units yet. They are taken in under Design and
        numbers.
      </p>
    )
  const stateOf = (unit: string) => units.find((herd) => herd.unit === unit)?.state ?? null
  const rows = outlines.map(({ unit }) => ({ unit, state: stateOf(unit) }))
  return (
    <Picture
      title={`Map of units, ${words}`}
      say={`${rows.length} units with an outline. North is up; equirectangular projection, true in the middle.`}
      file="coverage-map"
      size={{ width, height: plan.height + keyHeight }}
      table={{
        rows,
        rowKey: ({ unit }) => unit,
        columns: [
          { head: 'Unit', cell: ({ unit }) => unit },
          { head: 'State', cell: ({ state }) => (state ? coverageWords[state] : 'no animal') },
        ],
      }}
    >
      {plan.units.map(({ unit, path }) => {
        const state = stateOf(unit)
        const kind = state === null ? 'idle' : stateShapes[state]
        return <path key={unit} className={`map-unit map-${kind}`} d={path} fillRule="evenodd" />
      })}
      {plan.units.map(({ unit, label }) => {
        const state = stateOf(unit)
        return (
          <g key={unit}>
            {state && <StateMark state={state} x={label.x - 7} y={label.y - 18} />}
            <text
              className="picture-words map-name"
              x={label.x}
              y={label.y + 14}
              textAnchor="middle"
            >
              {unit}
            </text>
          </g>
        )
      })}
      <Key y={plan.height + 8} states={[...new Set(rows.flatMap(({ state }) => state ?? []))]} />
    </Picture>
  )
}

function Key({ y, states }: { y: number; states: readonly CoverageState[] }) {
  return (
    <>
      {states.map((state, place) => (
        <g key={state}>
          <StateMark state={state} x={12 + place * 210} y={y} />
          <text className="picture-words" x={32 + place * 210} y={y + 12}>
            {coverageWords[state]}
          </text>
        </g>
      ))}
    </>
  )
}
