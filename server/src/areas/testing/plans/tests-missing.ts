import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { type TestKind, testsOn } from './test-log.ts'

export interface MissingTest {
  readonly kind: TestKind
  /** The part that it should be on, from the drive down. */
  readonly on: string
}

const ofMotor = ['insulation-resistance', 'phase-resistance', 'rotation'] as const

/** The tests that a finished drive has no record of. */
export const testsMissing = plan((drive: Block, lookup: Lookup): readonly MissingTest[] => {
  const missing = (part: Block, kind: TestKind): readonly MissingTest[] =>
    testsOn(part, kind, lookup).length > 0
      ? []
      : [{ kind, on: part.path.split('.').slice(1).join('.') || part.kind }]
  const motors = childrenOf(drive, 'motor')
  return [
    ...motors.flatMap((motor) => ofMotor.flatMap((kind) => missing(motor, kind))),
    ...childrenOf(drive, 'controller')
      .filter((controller) => factOf(controller, 'controller.capacitance') !== undefined)
      .flatMap((controller) => missing(controller, 'precharge')),
    ...motors.flatMap((motor) => childrenOf(motor, 'sensor')).flatMap((sensor) => missing(sensor, 'sensor')),
  ]
})
