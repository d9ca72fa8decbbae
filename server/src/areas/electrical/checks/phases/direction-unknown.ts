import { at, check, published } from '../../../../checks/check.ts'
import { oneLine } from '../../../../checks/one-line.ts'
import { turnsOfMap } from '../../../common/ahead-turns.ts'

const job = (turns: string, mark = '') => `drive main {
  propeller { diameter: 420 mm  turns: right-hand }
  motor main { power: 15 kW  terminals: U, V, W${turns} }
  controller { terminals: A, B, C }
  phase-map {
    A to U, B to V, C to W${mark}
  }
}`

export default check({
  id: 'phases/direction-unknown',
  severity: 'information',
  title: 'Direction of rotation not checked',
  why: 'Whether the propeller drives ahead follows from the phase map, the motor, the controller, the gear and the hand of the propeller. If one of them is not stated, nobody knows before the first trial.',
  source: published('IEC 60034-8: terminal markings and direction of rotation'),
  on: 'phase-map',
  needs: { pairs: 'phase-map.pairs' },
  fires: job('', '\n#   ^^^^^^^^^^^^^^^^^^^^^^ turns'),
  quiet: job('  turns: clockwise'),
  run: ({ pairs }, lookup) => {
    const turns = turnsOfMap(lookup)
    if (!turns) return []
    const open = { todo: 'State what is missing.', found: 'not known' }
    if (turns.ok)
      return turns.value.hand
        ? []
        : [
            at(pairs, {
              message: `Set ahead, the shaft turns ${turns.value.shaft}; the propeller has no \`turns\`.`,
              detail: 'Seen from astern, looking forward. Whether it drives ahead is not known.',
              ...open,
              assumptions: turns.value.assumptions,
            }),
          ]
    const { type, words, missing = [] } = turns.fault
    // What cannot be read, a faulty map and a sensor that disagrees have findings of their own.
    if (type === 'unread' || type === 'map' || type === 'sensor') return []
    if (type === 'unsaid')
      return [
        at(pairs, {
          ...oneLine(
            `Whether the propeller drives ahead is not known without ${missing.join(', ')}.`,
            'Whether the propeller drives ahead is not known.',
          ),
          ...open,
        }),
      ]
    return [
      at(pairs, {
        message: 'Whether the propeller drives ahead is not known.',
        detail: words,
        todo: 'Turn the motor uncoupled at low speed and look.',
        found: 'not known',
      }),
    ]
  },
})
