import { type Block, childrenOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { type Outcome, ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { attempt, Missing, must } from './attempt.ts'
import { energyOfFile } from './energy.ts'
import { powerOfFile } from './power.ts'

/** What a service takes of what the banks have. */
interface ServiceEnergy {
  /** Share of what may be used, the reserve kept. */
  readonly share: number
  /** s */
  readonly time: number
  readonly assumptions: readonly string[]
}

/** The times of all points against how long the banks last at each: a share of each. */
export const serviceEnergy = plan(
  (service: Block, lookup: Lookup): Outcome<ServiceEnergy> =>
    attempt(() => {
      const [power, energy] = [lookup.ofFile(powerOfFile), lookup.ofFile(energyOfFile)]
      if (!power.ok) return power
      if (!energy.ok) return energy
      const points = childrenOf(service, 'point')
      if (points.length === 0) throw new Missing('a point of the service')
      const parts = points.map((point) => {
        const time = must(statedFact(point, 'point.time'), `the time of ${point.name ?? 'a point'}`)
        const demand = energy.value.asked[power.value.points.indexOf(idOf(point))]
        if (!demand)
          throw new Missing(`the resistance of the hull at the speed of ${point.name ?? 'a point'}`)
        return { time, share: time / demand.endurance }
      })
      return ok({
        share: parts.reduce((sum, { share }) => sum + share, 0),
        time: parts.reduce((sum, { time }) => sum + time, 0),
        assumptions: energy.value.assumptions,
      })
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
      if (!main) throw new Missing('a point of the service')
      if (!main.demand) throw new Missing(`the resistance of the hull at the speed of ${main.name}`)
      return ok({ range: main.demand.range, point: main.name, assumptions: energy.value.assumptions })
    }),
)
