import { check, published } from '../../../../checks/check.ts'
import { elide } from '../../../../quantity/elide.ts'
import { phaseFaults } from '../../plans/phase-faults.ts'

export default check({
  id: 'phases/doubled',
  severity: 'error',
  title: 'Two phases on one terminal',
  why: 'Two phases on one terminal short-circuit the controller.',
  source: published('IEC 60034-8: terminal markings and direction of rotation'),
  on: 'phase-map',
  needs: { pairs: 'phase-map.pairs' },
  fires: `drive main {
  controller { terminals: A, B, C }
  motor main { power: 15 kW  terminals: U, V, W }
  phase-map {
    A to U, B to V, C to V
#                   ^^^^^^ motor terminal V
  }
}`,
  quiet: `drive main {
  controller { terminals: A, B, C }
  motor main { power: 15 kW  terminals: U, V, W }
  phase-map {
    A to U, B to V, C to W
  }
}`,
  run: (_facts, lookup) =>
    phaseFaults(lookup.block, lookup)
      .filter(({ type }) => type === 'doubled')
      .map(({ words, terminal, at }) => ({
        at,
        message: `Two phases are connected to ${elide(words)}.`,
        todo: 'Connect each phase to a terminal of its own.',
        found: terminal,
      })),
})
