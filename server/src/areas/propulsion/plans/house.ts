import type { Block } from '../../../job/model.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup } from '../../../store/lookup.ts'
import { assumedFigures } from '../../common/assumed-figures.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { fedTogether } from '../../electrical/plans/fed-together.ts'
import { must } from './attempt.ts'

/** What loads besides the drives take from a bank, W. */
export interface House {
  /** Over the hours that the bank must last: each load by its duty. */
  readonly mean: number
  /** With all of them on. */
  readonly full: number
  readonly assumptions: readonly string[]
}

/** The loads that cables lead to from some batteries, also through converters, each with what of the power it takes from them comes to it. */
function loadsOf(
  batteries: readonly BlockId[],
  file: FileLookup,
): { readonly loads: ReadonlyMap<BlockId, number>; readonly assumptions: readonly string[] } {
  const networks = file.ofFile(fedTogether)
  const loads = new Map<BlockId, number>()
  const assumptions: string[] = []
  // By the batteries and converters that feed.
  const feeding = new Map(batteries.map((id) => [id, 1]))
  for (const [id, share] of feeding) {
    const network = networks.get(id)
    for (const load of network?.loads ?? []) if (!loads.has(load)) loads.set(load, share)
    for (const converter of network?.converters ?? []) {
      if (feeding.has(converter)) continue
      const block = file.blockOf(converter)
      const stated = statedFact(block, 'converter.efficiency')
      if (stated === undefined) assumptions.push(`efficiency of ${block.name ?? 'the converter'} is 90 %`)
      feeding.set(converter, share * (stated ?? assumedFigures.converterEfficiency))
    }
  }
  return { loads, assumptions }
}

/** What a load draws when on, W. Throws what is missing. */
function powerOf(load: Block, nominal: number): number {
  const power = statedFact(load, 'load.power')
  const current = statedFact(load, 'load.current')
  const volts = statedFact(load, 'load.voltage') ?? nominal
  const name = load.name ?? 'the load'
  const byCurrent = current === undefined ? undefined : current * volts
  return Math.max(must(power ?? byCurrent, `what ${name} draws`), byCurrent ?? 0)
}

/** All that a bank feeds besides the drives. `nominal`: of the bank, V. Throws what is missing. */
export function houseOf(batteries: readonly BlockId[], nominal: number, file: FileLookup): House {
  const { loads, assumptions } = loadsOf(batteries, file)
  let [mean, full] = [0, 0]
  for (const [id, share] of loads) {
    const load = file.blockOf(id)
    const drawn = powerOf(load, nominal) / share
    mean += drawn * (statedFact(load, 'load.duty') ?? 1)
    full += drawn
  }
  return { mean, full, assumptions }
}
