/** A laptop's clock, steady or set about by someone at every few animals. */

const [minute, hour, day] = [60_000, 3_600_000, 86_400_000]
/** Forward over a night, back by what is tolerated, back by too much, to 1970, and right again. */
const jumps = [0, 9 * hour, -5 * minute, -3 * hour, -20 * 365 * day, 2 * day, 0]

export function clockOf(kind: 'steady' | 'jumping') {
  let steps = 0
  const offset = () => (kind === 'steady' ? 0 : (jumps[Math.floor(steps / 3) % jumps.length] ?? 0))
  return {
    now: () => Math.max(0, Date.now() + offset()),
    step: () => {
      steps += 1
    },
  }
}
