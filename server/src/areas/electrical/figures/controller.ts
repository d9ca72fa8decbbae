import { published } from '../../../checks/check.ts'
import { factOf } from '../../../job/model.ts'
import { figureWhereKnown } from '../../common/figure.ts'
import { leastShare, motorCurrent } from '../plans/motor-current.ts'

const current = figureWhereKnown({
  id: 'controller/motor-current',
  on: 'controller',
  title: 'Current of its motor',
  kind: 'current',
  doc: 'The line current that the motor draws at its rated power and voltage, which the controller has to give. With less than 0.9 of it the motor cannot give its rated power.',
  formula: 'shaft power / (√3 × voltage × power factor × efficiency).',
  source: published('P = √3 U I cos φ η, any text on electrical machines; 0.9: common practice, no source'),
  from: (controller, lookup) => {
    const needed = motorCurrent(controller, lookup)
    return needed && { ...needed, gives: factOf(controller, 'controller.current')?.value }
  },
  of: ({ current: value, assumptions, gives }) => ({
    value,
    ...(gives !== undefined && {
      limit: { high: gives / leastShare },
      limitFrom: 'its continuous current / 0.9',
    }),
    assumptions,
  }),
})

export const controllerFigures = [current]
