import { phaseFaults } from '../../plans/phase-faults.ts'
import { at, check, published } from '../check.ts'

export default check({
  id: 'phases/unknown-terminal',
  severity: 'error',
  title: 'Terminal that is not there',
  why: 'A mark that neither controller nor motor has is a slip of the pen, or the wrong machine.',
  source: published('IEC 60034-8: terminal markings and direction of rotation'),
  on: 'phase-map',
  needs: { pairs: 'phase-map.pairs' },
  fires: `drive main {
  controller { terminals: A, B, C }
  motor main { power: 15 kW  terminals: U, V, W }
  phase-map {
    A to U, B to V, C to X
#   ^^^^^^^^^^^^^^^^^^^^^^ X
  }
}`,
  quiet: `drive main {
  controller { terminals: A, B, C }
  motor main { power: 15 kW  terminals: U, V, W }
  phase-map {
    A to U, B to V, C to W
  }
}`,
  run: ({ pairs }, context) => {
    const faults = phaseFaults(context.block, context).filter(
      ({ fault }) => fault === 'unknown-from' || fault === 'unknown-to',
    )
    if (faults.length === 0) return []
    const terminals = [...new Set(faults.map(({ terminal }) => terminal))].join(', ')
    return [
      at(pairs, {
        message: `Neither side has terminal ${terminals} there.`,
        todo: 'Use the marks on the machines: those in `terminals` of controller and motor.',
        found: terminals,
      }),
    ]
  },
})
