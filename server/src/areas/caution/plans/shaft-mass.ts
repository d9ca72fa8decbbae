import { roundBarMass } from '../../../engineering/round-bar-mass.ts'
import { type Block, factOf } from '../../../job/model.ts'

/** kg/m³, of bronze. From memory. */
const heaviestShaft = 8900

/** The heaviest that a shaft can be, kg: solid, of the heaviest material in use. Undefined where its size is not known. */
export function heaviestMass(shaft: Block): number | undefined {
  const diameter = factOf(shaft, 'shaft.diameter')?.value.nominal
  const length = factOf(shaft, 'shaft.length')?.value
  return diameter === undefined || length === undefined
    ? undefined
    : roundBarMass({ diameter, length, density: heaviestShaft })
}
