import { at, check, commonPractice } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatCarried, formatLoad } from '../../../common/amperes.ts'
import { fusesBefore } from '../../plans/controller-limits.ts'

export default check({
  id: 'controller/limit-beyond-fuse',
  severity: 'warning',
  title: 'Controller set to more than its fuse carries',
  why: 'A controller may take its input limit for as long as the propeller asks for it. A fuse or breaker rated for less then opens under way, when the drive is needed most.',
  source: commonPractice('a fuse or breaker carries its rated current and no more for any length of time'),
  on: 'controller',
  needs: { limit: 'controller.input-current-limit' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW }
  controller {
    input-current-limit: 350 A
#                        ^^^^^ 315 A
  }
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  protection main-fuse { rating: 315 A  in: feed  at: 100 mm }
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW }
  controller { input-current-limit: 250 A }
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  protection main-fuse { rating: 315 A  in: feed  at: 100 mm }
}`,
  run: ({ limit }, lookup) => {
    const fuses = fusesBefore(lookup.block, lookup)
    if (!fuses) return []
    const carries = fuses.reduce((sum, one) => sum + one.carries, 0)
    if (reaches(carries, limit.value)) return []
    const [found, most] = [formatLoad(limit.value), formatCarried(carries)]
    return [
      at(limit, {
        message: `The controller may take ${found}; ${fuses.length > 1 ? 'the fuses before it carry' : 'the fuse before it carries'} ${most}.`,
        todo: 'Set a lower limit. Or use a larger rating that suits the cable too.',
        found,
        limit: `at most ${most}`,
        assumptions: [...new Set(fuses.flatMap(({ assumptions }) => assumptions))],
        related: fuses.map(({ device }) => ({ at: device.head, message: 'the fuse or breaker' })),
      }),
    ]
  },
})
