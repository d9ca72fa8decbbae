import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatShare } from '../../../../quantity/format-measures.ts'
import { unlessReplaced } from '../../history.ts'
import { prechargeTimeOf } from '../../plans/precharge-time.ts'

export default check({
  id: 'test/precharge-differs',
  severity: 'warning',
  title: 'Precharge that takes another time than it should',
  why: 'A precharge that is much too fast does not go through its resistor: a contactor that has welded or a wrong resistor lets the surge through. One that is much too slow overheats the resistor, or something draws current meanwhile. Either way the contactor soon closes on a voltage that nobody expects.',
  source: published(
    't = −R C ln(1 − x): Bird, Electrical Circuit Theory and Technology, ch. 17; 1.5 times either way, voltages within 1 %: common practice, no source',
  ),
  on: 'test',
  needs: { time: 'test.time', end: 'test.end-voltage' },
  fires: `drive main {
  controller { capacitance: 6.8 mF }
  contactor main-contactor { current: 250 A }
  precharge { around: main-contactor  resistance: 47 ohm }
  test t1 {
    kind: precharge
    on: controller
    taken: 2026-03-12
    voltage: 98 V
    end-voltage: 94 V
    time: 0.2 s
#         ^^^^^ 0.635 s
  }
}`,
  quiet: `drive main {
  controller { capacitance: 6.8 mF }
  contactor main-contactor { current: 250 A }
  precharge { around: main-contactor  resistance: 47 ohm }
  test t1 {
    kind: precharge
    on: controller
    taken: 2026-03-12
    voltage: 98 V
    end-voltage: 94 V
    time: 1.1 s
  }
}`,
  run: ({ time, end }, lookup) => {
    const precharge = prechargeTimeOf(lookup.block, lookup)
    if (!precharge) return []
    const { least, most, share, isBeyond } = precharge
    if (isBeyond) {
      const [found, limit] = [formatShare(share), formatShare(precharge.end)]
      return unlessReplaced(lookup, [
        at(end, {
          message: `The precharge ended at ${found} of the voltage of the battery; with the discharge resistance it comes to ${limit}.`,
          todo: 'Check the precharge resistor, the contactor, and the discharge resistance.',
          found,
          limit: `at most ${limit}`,
        }),
      ])
    }
    const isShort = !reaches(time.value, least)
    if (!isShort && reaches(most, time.value)) return []
    const rounded = (seconds: number) => Number(seconds.toPrecision(3))
    const found = lookup.show(time.value, 'time')
    const limit = lookup.showBand({ low: rounded(least), high: rounded(most) }, 'time')
    return unlessReplaced(lookup, [
      at(time, {
        message: `The precharge took ${found}; by its resistance and the capacitance it takes ${limit}.`,
        todo: isShort
          ? 'Check whether the contactor is welded, whether the precharge resistor is the one stated, and the record.'
          : 'Check the precharge resistor, and what else draws current while the controller is charged.',
        found,
        limit,
      }),
    ])
  },
})
