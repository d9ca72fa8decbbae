import { at, check, published } from '../../../../checks/check.ts'
import { touchSafe } from '../../../../engineering/electrical/precharge.ts'
import { dangerousFrom } from '../../../common/dangers.ts'
import { unlessReplaced } from '../../history.ts'

export default check({
  id: 'test/still-charged',
  severity: 'error',
  title: 'Voltage left after discharge',
  why: 'Whoever opens the controller after the stated time touches what is left. Dry skin may touch up to 60 V DC, wet skin up to 30 V.',
  source: published('IEC 60598-1:2008, 8.2.3: 60 V DC dry, 30 V wet'),
  on: 'test',
  needs: { kind: 'test.kind', end: 'test.end-voltage' },
  fires: `drive main {
  controller { capacitance: 6.8 mF }
  test t1 {
    kind: discharge
    on: controller
    taken: 2026-03-12
    voltage: 98 V
    end-voltage: 72 V
#                ^^^^ 60 V
    time: 60 s
  }
}`,
  quiet: `drive main {
  controller { capacitance: 6.8 mF }
  test t1 {
    kind: discharge
    on: controller
    taken: 2026-03-12
    voltage: 98 V
    end-voltage: 12 V
    time: 60 s
  }
}`,
  run: ({ kind, end }, lookup) => {
    const wet = dangerousFrom('live-voltage')
    if (kind.value !== 'discharge' || end.value < wet) return []
    const isDry = end.value <= touchSafe
    const [found, limit] = [
      lookup.show(end.value, 'voltage'),
      lookup.show(isDry ? wet : touchSafe, 'voltage'),
    ]
    return unlessReplaced(lookup, [
      at(end, {
        severity: isDry ? 'warning' : 'error',
        message: `After discharge ${found} is left; ${isDry ? 'wet' : 'dry'} skin may touch ${isDry ? 'less than' : 'up to'} ${limit}.`,
        todo: 'Wait longer before the controller is opened, and state that time at its cover.',
        found,
        limit: isDry ? `below ${limit}` : `at most ${limit}`,
      }),
    ])
  },
})
