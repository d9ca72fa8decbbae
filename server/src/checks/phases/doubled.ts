import { phaseFaults } from '../../plans/phase-faults.ts'
import { check, published } from '../check.ts'

export default check({
  id: 'phases/doubled',
  severity: 'error',
  title: 'Two phases on one terminal',
  why: 'Two phases on one terminal are a short circuit through the controller.',
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
  run: (_facts, context) =>
    phaseFaults(context.block, context)
      .filter(({ type }) => type === 'doubled')
      .map(({ words, terminal, at }) => ({
        at,
        message: `Two phases are joined to ${words}.`,
        todo: 'Give each terminal one phase. The controller holds charge after it is switched off: wait as its maker says and prove it dead.',
        found: terminal,
      })),
})
