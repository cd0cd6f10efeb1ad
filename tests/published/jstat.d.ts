/** The few functions of jStat, which brings no types, that checks compare with. */
declare module 'jstat' {
  interface Counted {
    cdf(count: number, mean: number): number
  }
  const jstat: {
    readonly poisson: Counted
    readonly negbin: { cdf(count: number, successes: number, chance: number): number }
    readonly beta: { inv(share: number, alpha: number, beta: number): number }
    readonly hypgeom: {
      pdf(drawn: number, all: number, marked: number, draws: number): number
    }
    readonly gamma: { inv(share: number, shape: number, scale: number): number }
    readonly studentt: { inv(share: number, freedom: number): number }
  }
  export default jstat
}
