import { phaseFaults } from '../../plans/phase-faults.ts'
import { at, check, published } from '../check.ts'

export default check({
  id: 'phases/incomplete',
  severity: 'error',
  title: 'Phase without its terminal',
  why: 'A phase left open runs the motor on two: it hums, heats and does not turn.',
  source: published('IEC 60034-8: terminal markings and direction of rotation'),
  on: 'phase-map',
  needs: { pairs: 'phase-map.pairs' },
  fires: `drive main {
  controller { terminals: A, B, C }
  motor main { power: 15 kW  terminals: U, V, W }
  phase-map {
    A to U, B to V
#   ^^^^^^^^^^^^^^ C
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
      ({ fault }) => fault === 'missing-from' || fault === 'missing-to',
    )
    if (faults.length === 0) return []
    const terminals = [...new Set(faults.map(({ terminal }) => terminal))].join(', ')
    return [
      at(pairs, {
        message: `Terminal ${terminals} ${faults.length === 1 ? 'is' : 'are'} not in the phase map.`,
        todo: 'Give every phase its terminal. The controller holds charge after it is switched off: wait as its maker says and prove it dead.',
        found: terminals,
      }),
    ]
  },
})
