import { type Block, childrenOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { type Outcome, ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { attempt, Missing, must } from './attempt.ts'
import { energyOfFile } from './energy.ts'
import { powerOfFile } from './power.ts'

/** A point of the service, and what it takes. What is not known is absent. SI. */
interface Leg {
  readonly name: string
  readonly boatSpeed?: number
  readonly time?: number
  /** From all banks. */
  readonly power?: number
  readonly energy?: number
  /** Of what may be used, the reserve kept. */
  readonly share?: number
}

interface ServiceLegs {
  readonly legs: readonly Leg[]
  readonly assumptions: readonly string[]
}

/** The points of the service one by one, in the order of the file. */
export const serviceLegs = plan(
  (service: Block, lookup: Lookup): Outcome<ServiceLegs> =>
    attempt(() => {
      const [power, energy] = [lookup.ofFile(powerOfFile), lookup.ofFile(energyOfFile)]
      if (!power.ok) return power
      if (!energy.ok) return energy
      const points = childrenOf(service, 'point')
      if (points.length === 0) throw new Missing('the service has no point')
      const legs = points.map((point): Leg => {
        const boatSpeed = statedFact(point, 'point.boat-speed')
        const time = statedFact(point, 'point.time')
        const demand = energy.value.asked[power.value.points.indexOf(idOf(point))]
        return {
          name: point.name ?? 'a point',
          ...(boatSpeed !== undefined && { boatSpeed }),
          ...(time !== undefined && { time }),
          ...(demand && { power: demand.power }),
          ...(demand &&
            time !== undefined && { energy: demand.power * time, share: time / demand.endurance }),
        }
      })
      return ok({ legs, assumptions: energy.value.assumptions })
    }),
)

/** What a service takes of what the banks have. */
interface ServiceEnergy {
  /** Share of what may be used, the reserve kept. */
  readonly share: number
  /** s */
  readonly time: number
  /** From all banks, J. */
  readonly energy: number
  readonly assumptions: readonly string[]
}

/** The times of all points against how long the banks last at each: a share of each. */
export const serviceEnergy = plan(
  (service: Block, lookup: Lookup): Outcome<ServiceEnergy> =>
    attempt(() => {
      const outcome = serviceLegs(service, lookup)
      if (!outcome.ok) return outcome
      const { legs, assumptions } = outcome.value
      const sum = { share: 0, time: 0, energy: 0 }
      for (const { name, time, energy, share } of legs) {
        sum.time += must(time, `the time of ${name}`)
        if (energy === undefined || share === undefined)
          throw new Missing(`the resistance of the hull is not known at the speed of ${name}`)
        sum.energy += energy
        sum.share += share
      }
      return ok({ ...sum, assumptions })
    }),
)

/** How far the boat gets at the point that takes the longest time; of several as long, the shortest way. */
interface ServiceRange {
  readonly range: number
  readonly point: string
  readonly assumptions: readonly string[]
}

export const serviceRange = plan(
  (service: Block, lookup: Lookup): Outcome<ServiceRange> =>
    attempt(() => {
      const [power, energy] = [lookup.ofFile(powerOfFile), lookup.ofFile(energyOfFile)]
      if (!power.ok) return power
      if (!energy.ok) return energy
      const points = childrenOf(service, 'point').map((point) => ({
        name: point.name ?? 'the point',
        // Of a point without a time nobody knows that it is not the longest.
        time: statedFact(point, 'point.time') ?? Number.POSITIVE_INFINITY,
        demand: energy.value.asked[power.value.points.indexOf(idOf(point))],
      }))
      const longest = Math.max(...points.map(({ time }) => time))
      const [main] = points
        .filter(({ time }) => time === longest)
        .toSorted((a, b) => (a.demand?.range ?? 0) - (b.demand?.range ?? 0))
      if (!main) throw new Missing('the service has no point')
      if (!main.demand)
        throw new Missing(`the resistance of the hull is not known at the speed of ${main.name}`)
      return ok({ range: main.demand.range, point: main.name, assumptions: energy.value.assumptions })
    }),
)
