import type { Kind } from '../../../quantity/kinds.ts'
import type { TestKind } from './test-log.ts'

interface Row {
  /** Kinds of part that it is done on. */
  readonly on: readonly string[]
  /** What `permitted` is of, and which end of it limits. */
  readonly permitted: readonly (readonly [Kind, 'low' | 'high'])[]
  /** Whether the drive is under power. */
  readonly isPowered?: true
}

/** What each kind of test is about. */
export const kindsOfTest: Readonly<Record<TestKind, Row>> = {
  'insulation-resistance': { on: ['motor', 'cable', 'battery'], permitted: [['resistance', 'low']] },
  'phase-resistance': { on: ['motor'], permitted: [['ratio', 'high']] },
  'no-load-current': { on: ['motor'], permitted: [['ratio', 'high']], isPowered: true },
  precharge: { on: ['controller'], permitted: [['time', 'high']], isPowered: true },
  discharge: { on: ['controller'], permitted: [['time', 'high']], isPowered: true },
  rotation: { on: ['motor'], permitted: [], isPowered: true },
  'earth-leakage': {
    on: ['battery', 'busbar'],
    permitted: [
      ['current', 'high'],
      ['resistance', 'low'],
    ],
  },
  bonding: { on: ['cable'], permitted: [['resistance', 'high']] },
  sensor: { on: ['sensor'], permitted: [] },
  'run-out': { on: ['motor', 'gear', 'shaft'], permitted: [['length', 'high']] },
}
