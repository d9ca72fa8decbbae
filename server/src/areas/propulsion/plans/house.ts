import type { Block } from '../../../job/model.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup } from '../../../store/lookup.ts'
import { assumedFigures } from '../../common/assumed-figures.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { must } from './attempt.ts'
import { jointsOf } from './bank.ts'

/** What loads besides the drives take from a bank, W. */
export interface House {
  /** Over the hours that the bank must last: each load by its duty. */
  readonly mean: number
  /** With all of them on. */
  readonly full: number
  readonly assumptions: readonly string[]
}

/** What a current to a load does not pass: motors take it, chargers only give it. */
const isEnd = ({ kind }: Block): boolean => kind === 'motor' || kind === 'charger' || kind === 'load'

/** The loads that cables lead to from some batteries, each with what of the power it takes from them comes to it. */
function loadsOf(
  batteries: readonly BlockId[],
  file: FileLookup,
): { readonly loads: ReadonlyMap<BlockId, number>; readonly assumptions: readonly string[] } {
  const joints = file.ofFile(jointsOf)
  const loads = new Map<BlockId, number>()
  const assumptions: string[] = []
  const reached = new Map(batteries.map((id) => [id, 1]))
  for (const [id, share] of reached) {
    const block = file.blockOf(id)
    if (block.kind === 'load') loads.set(id, share)
    if (isEnd(block)) continue
    const stated = block.kind === 'converter' ? statedFact(block, 'converter.efficiency') : 1
    if (stated === undefined) assumptions.push(`efficiency of ${block.name ?? 'the converter'} is 90 %`)
    for (const other of joints.get(id) ?? [])
      if (!reached.has(other)) reached.set(other, share * (stated ?? assumedFigures.converterEfficiency))
  }
  return { loads, assumptions }
}

/** What a load draws when on, W. Throws what is missing. */
function powerOf(load: Block, nominal: number): number {
  const power = statedFact(load, 'load.power')
  const current = statedFact(load, 'load.current')
  const volts = statedFact(load, 'load.voltage') ?? nominal
  const name = load.name ?? 'the load'
  return Math.max(
    must(power ?? (current === undefined ? undefined : current * volts), `what ${name} draws`),
    (current ?? 0) * volts,
  )
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
