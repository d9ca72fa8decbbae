import type { Block } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { figure } from '../../common/figure.ts'
import { failed } from '../../common/outcome.ts'
import { bladeAreaOf } from '../plans/blade-area.ts'
import { bollardOf } from '../plans/power.ts'
import { heldBy } from '../power-rows.ts'
import { keller, series } from '../sources.ts'

/** Of the drive around a propeller; one at the top of a file is a part. */
function atBollard(propeller: Block, lookup: Lookup): ReturnType<typeof bollardOf> {
  const { parent } = propeller
  return parent?.kind === 'drive'
    ? bollardOf(parent, lookup.from(parent))
    : failed({ type: 'no-drive', words: 'It is in no drive.' })
}

const common = {
  on: 'propeller',
  from: atBollard,
  source: series,
  formula:
    'T = KT ρ n² D⁴, Q = KQ ρ n² D⁵ at J = 0, at the speed where Q is what the motor gives through the gear.',
} as const

const bollardThrust = figure({
  ...common,
  id: 'propeller/bollard-thrust',
  title: 'Thrust at bollard',
  kind: 'force',
  doc: 'Thrust of the propeller with the boat at rest and the motor at all it can give continuously, + ahead. The pull on a line is a few per cent less.',
  of: ({ state, assumptions }) => ({
    value: state.thrust,
    from: `held by ${heldBy[state.limitedBy]}`,
    assumptions,
  }),
})

const bollardSpeed = figure({
  ...common,
  id: 'propeller/bollard-speed',
  title: 'Propeller speed at bollard',
  kind: 'rotational speed',
  doc: 'How fast the propeller turns then.',
  of: ({ state, assumptions }) => ({ value: state.speed, assumptions }),
})

const bollardPower = figure({
  ...common,
  id: 'propeller/bollard-power',
  title: 'Motor power at bollard',
  kind: 'power',
  doc: 'Power at the shaft of the motor then.',
  of: ({ state, assumptions }) => ({ value: state.motorPower, assumptions }),
})

const bladeArea = figure({
  id: 'propeller/blade-area',
  on: 'propeller',
  title: 'Blade area',
  kind: 'ratio',
  unit: '%',
  doc: 'Expanded blade area ratio, against the least that keeps the propeller from cavitating where it pushes hardest: at the top speed, or at a point of the service.',
  formula: 'AE/A0 ≥ (1.3 + 0.3 Z) T / ((p0 − pv) D²) + k, k = 0.2 for one screw, 0.1 for several.',
  source: keller,
  from: bladeAreaOf,
  of: ({ stated, needed, thrust, boatSpeed, assumptions }, lookup) => ({
    value: stated,
    limit: { low: needed },
    limitFrom: 'Keller',
    from: `${lookup.show(thrust, 'force')} at ${lookup.show(boatSpeed, 'speed')}`,
    assumptions,
  }),
})

export const propellerFigures = [bollardThrust, bollardSpeed, bollardPower, bladeArea]
