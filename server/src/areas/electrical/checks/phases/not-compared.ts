import { at, check, published } from '../../../../checks/check.ts'
import { factOf } from '../../../../job/model.ts'

export default check({
  id: 'phases/not-compared',
  severity: 'information',
  title: 'Phase map not checked against terminals',
  why: 'Without the terminals of a machine, a missing phase or a wrong mark cannot be found.',
  source: published('IEC 60034-8: terminal markings and direction of rotation'),
  on: 'phase-map',
  needs: { pairs: 'phase-map.pairs' },
  fires: `drive main {
  controller { terminals: A, B, C }
  motor left { power: 15 kW  terminals: U, V, W }
  motor right { power: 15 kW  terminals: U, V, W }
  phase-map {
    A to U, B to V
#   ^^^^^^^^^^^^^^ motor
  }
}`,
  quiet: `drive main {
  controller { terminals: A, B, C }
  motor main { power: 15 kW  terminals: U, V, W }
  phase-map {
    A to U, B to V, C to W
  }
}`,
  run: ({ pairs }, lookup) => {
    const [controller, motor] = [lookup.near('controller'), lookup.near('motor')]
    // Terminals that cannot be read are said where they are written.
    const open = [
      ...(controller && (factOf(controller, 'controller.terminals') || controller.unread.has('terminals'))
        ? []
        : ['controller']),
      ...(motor && (factOf(motor, 'motor.terminals') || motor.unread.has('terminals')) ? [] : ['motor']),
    ]
    return open.length === 0
      ? []
      : [
          at(pairs, {
            message: `The phase map is not checked against the terminals of the ${open.join(' and the ')}.`,
            detail: 'The job does not list them, or has several machines to choose from.',
            todo: 'List `terminals` as they are marked. Keep one motor and one controller in a drive.',
          }),
        ]
  },
})
