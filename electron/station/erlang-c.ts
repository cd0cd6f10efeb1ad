/**
 * Waiting in the steady state with `servers` equal servers, arrivals by chance and exponential work
 * (M/M/c). Source: Erlang's second formula as in Gross, Shortle, Thompson & Harris, "Fundamentals of
 * Queueing Theory", section on M/M/c. An opening morning is not steady: see the simulation for it.
 */

export interface Load {
  /** Arrivals a minute. */
  readonly arrivals: number
  /** Animals that one server finishes a minute. */
  readonly service: number
  readonly servers: number
}

export type SteadyLine =
  | {
      readonly is: 'steady'
      /** Chance that an arrival waits at all. */
      readonly chanceOfWait: number
      /** Animals waiting, on average. */
      readonly waiting: number
      /** Minutes of wait, on average over all arrivals. */
      readonly meanWait: number
    }
  /** More comes than can be worked: there is no steady state. */
  | {
      readonly is: 'grows'
      /** Animals by which the line grows a minute (fluid estimate: arrivals less capacity). */
      readonly growth: number
    }

export function steadyLine({ arrivals, service, servers }: Load): SteadyLine {
  const load = arrivals / service
  if (!(load < servers)) return { is: 'grows', growth: arrivals - servers * service }
  const chanceOfWait = erlangC(load, servers)
  const waiting = (chanceOfWait * load) / (servers - load)
  return {
    is: 'steady',
    chanceOfWait,
    waiting,
    meanWait: arrivals === 0 ? 0 : waiting / arrivals,
  }
}

/** Erlang C by way of Erlang B's recursion, which neither overflows nor cancels. */
function erlangC(load: number, servers: number): number {
  let blocked = 1
  for (let count = 1; count <= servers; count += 1)
    blocked = (load * blocked) / (count + load * blocked)
  return (servers * blocked) / (servers - load * (1 - blocked))
}

/** Chance that an arrival waits longer than so many minutes; 1 where the line grows without limit. */
export function chanceOfWaitOver(load: Load, minutes: number): number {
  const line = steadyLine(load)
  if (line.is === 'grows') return 1
  return line.chanceOfWait * Math.exp(-(load.servers * load.service - load.arrivals) * minutes)
}

/** The fewest servers with which at least half of the arrivals wait no longer than the target. */
export function serversFor(load: Omit<Load, 'servers'>, targetMinutes: number): number {
  let servers = 1
  while (chanceOfWaitOver({ ...load, servers }, targetMinutes) > 0.5) servers += 1
  return servers
}

/**
 * Minutes that an arrival waits `after` minutes from now while a line of so many grows or shrinks at
 * a steady rate: the fluid estimate, for when there is no steady state.
 */
export function fluidWait(load: Load, waiting: number, after: number): number {
  const capacity = load.servers * load.service
  return Math.max(0, waiting + (load.arrivals - capacity) * after) / capacity
}
