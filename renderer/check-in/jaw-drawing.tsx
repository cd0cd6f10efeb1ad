import type { AgeClass } from '../../shared-types/animal.ts'

/**
 * Cusps of each cheek tooth from front to back, as the criteria count them.
 * Age by lower jaw: Indiana DNR, in.gov/dnr/fishwild/2737.htm: fewer than six cheek teeth, young of
 * the year; six with a three-cusped third tooth, yearling; six with a two-cusped third, adult.
 */
const cusps: Record<AgeClass, readonly number[]> = {
  young: [1, 2, 3, 2, 2],
  yearling: [1, 2, 3, 2, 2, 3],
  adult: [1, 2, 2, 2, 2, 3],
}

const gum = 46
const firstTooth = 78
const toothWidth = [14, 18, 25, 22, 23, 28] as const

interface Tooth {
  readonly place: number
  readonly left: number
  readonly width: number
  readonly cusps: number
}

function teethOf(age: AgeClass): Tooth[] {
  let left = firstTooth
  return cusps[age].map((count, index) => {
    const width = toothWidth[index] ?? 22
    const tooth = { place: index + 1, left, width, cusps: count }
    left += width + 3
    return tooth
  })
}

function crown({ left, width, cusps: count }: Tooth): string {
  const step = width / count
  const points = Array.from({ length: count }, (_, cusp) => {
    const peak = left + (cusp + 0.5) * step
    return `L${peak},${gum - 26} L${left + (cusp + 1) * step},${gum - 15}`
  })
  return `M${left},${gum} L${left},${gum - 15} ${points.join(' ')} L${left + width},${gum} Z`
}

/** One lower jaw from the side, front teeth to the left; the third cheek tooth stands out. */
export function JawDrawing({ age }: { readonly age: AgeClass }) {
  return (
    <svg className="jaw" viewBox="0 10 268 78" aria-hidden="true" focusable="false">
      <path
        className="jaw-bone"
        d="M8,34 C14,30 22,30 30,35 C44,44 60,47 74,46 L232,46 C244,44 250,30 258,12 L264,18 C262,50 262,74 252,84 C222,82 190,70 150,68 C100,66 40,66 8,34 Z"
      />
      <path className="jaw-tooth" d="M10,34 L6,18 L14,16 L17,31 Z M18,31 L18,14 L26,14 L25,32 Z" />
      {teethOf(age).map((tooth) => (
        <g key={tooth.place}>
          <path
            className={tooth.place === 3 ? 'jaw-tooth jaw-third' : 'jaw-tooth'}
            d={crown(tooth)}
          />
          <text className="jaw-number" x={tooth.left + tooth.width / 2} y={gum + 16}>
            {tooth.place}
          </text>
        </g>
      ))}
    </svg>
  )
}
