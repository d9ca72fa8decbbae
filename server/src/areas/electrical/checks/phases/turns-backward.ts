import { at, check, published } from '../../../../checks/check.ts'
import { replace, textAt } from '../../../../checks/fix-text.ts'
import { factOf, placeOfPart } from '../../../../job/model.ts'
import { type AheadTurns, turnsOfMap } from '../../../common/ahead-turns.ts'
import { exchanged, rotationWords } from '../../rotation-words.ts'

/** What to do depends on whether the controller knows the angle of the rotor. */
function todoFor({ sensor, exchange }: AheadTurns): string {
  const setting = 'set the direction in the controller as its maker says, and write `reversed`'
  if (sensor === 'none')
    return `Connect ${exchanged(exchange)}. Or ${setting}. First make sure that each \`turns\` is right.`
  const keep = `do not exchange phases: ${setting}`
  if (sensor) return `The motor has a position sensor: ${keep}. First make sure that each \`turns\` is right.`
  return `State \`position-sensor\` of the motor. Without a sensor, connect ${exchanged(exchange)}. With one, ${keep}.`
}

const job = (map: string, mark = '') => `drive main {
  propeller { diameter: 420 mm  turns: right-hand }
  gear { ratio: 2.5  turns: opposite }
  motor main { power: 15 kW  terminals: U, V, W  turns: clockwise  position-sensor: none }
  controller { terminals: A, B, C  reversed: no }
  phase-map {
    ${map}${mark}
  }
}`

export default check({
  id: 'phases/turns-backward',
  severity: 'error',
  title: 'Propeller that turns backward',
  why: 'With the controller set ahead, the propeller drives the boat astern. The first time this shows may be alongside the quay. Seen from astern, a right-hand propeller turns clockwise going ahead.',
  source: published(
    'IEC 60034-8, as instructions for industrial low-voltage motors cite it: phases in order on U V W turn the motor clockwise, facing its drive end; two exchanged turn it the other way',
  ),
  on: 'phase-map',
  needs: { pairs: 'phase-map.pairs' },
  fires: job('A to U, B to V, C to W', '\n#   ^^^^^^^^^^^^^^^^^^^^^^ Connect A to V and B to U'),
  quiet: job('A to V, B to U, C to W'),
  run: ({ pairs }, lookup) => {
    const turns = turnsOfMap(lookup)
    if (!turns?.ok || turns.value.drivesAhead !== false) return []
    const { shaft, hand, assumptions } = turns.value
    const [motor, gear, propeller] = [lookup.near('motor'), lookup.near('gear'), lookup.near('propeller')]
    const related = [
      motor && { value: factOf(motor, 'motor.turns'), message: 'how the motor turns' },
      gear && { value: factOf(gear, 'gear.turns'), message: 'how the gear turns' },
      propeller && { value: factOf(propeller, 'propeller.turns'), message: 'the hand of the propeller' },
    ].flatMap((one) => (one?.value ? [{ at: one.value.at, message: one.message }] : []))
    return [
      at(pairs, {
        message: `Set ahead, the shaft turns ${shaft}; the ${hand} propeller then drives astern.`,
        detail: `Seen from astern, looking forward. ${rotationWords(turns.value)}`,
        todo: todoFor(turns.value),
        found: shaft,
        limit: shaft === 'clockwise' ? 'counter-clockwise' : 'clockwise',
        assumptions,
        related,
      }),
    ]
  },
  fixes: (_finding, { block, lookup }) => {
    const turns = lookup && turnsOfMap(lookup)
    const pairs = block && factOf(block, 'phase-map.pairs')
    if (!turns?.ok || turns.value.sensor !== 'none' || !pairs || pairs.origin) return []
    const [one, other] = turns.value.exchange.map(([from]) => {
      const place = placeOfPart(
        pairs,
        pairs.value.findIndex((pair) => pair.from === from),
      )
      const [start, end, more] = textAt(place).split(/\s+to\s+/)
      return more === undefined && start && end ? { place, start, end } : undefined
    })
    if (!one || !other) return []
    return [
      {
        title: `Exchange ${one.end} and ${other.end}`,
        edits: [
          replace(one.place, `${one.start} to ${other.end}`),
          replace(other.place, `${other.start} to ${one.end}`),
        ],
      },
    ]
  },
})
