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

/** The cheek teeth of one lower jaw from the side, front to the left; the third stands out. */
export function JawDrawing({ age }: { readonly age: AgeClass }) {
  return (
    <svg className="jaw" viewBox="62 14 184 62" aria-hidden="true" focusable="false">
      <path
        className="jaw-bone"
        d="M40,43 C54,46 64,46 74,46 L232,46 C240,45 244,40 250,30 L250,82 C222,80 190,70 150,69 C110,68 70,68 40,64 Z"
      />
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
