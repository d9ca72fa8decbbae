import { at, check, published } from '../../../../checks/check.ts'
import { unlessReplaced } from '../../history.ts'
import { dischargeOf } from '../../plans/discharge.ts'

/** Capacitors differ by 20 % from what is printed on them, resistors by 10 %; and what else draws current is not known. Common practice, no source. */
const factor = 1.5

export default check({
  id: 'test/discharge-differs',
  severity: 'warning',
  title: 'Discharge that takes another time than it should',
  why: 'A discharge that takes much longer has a broken resistor or more capacitance than stated, and whoever waits as long as stated meets a live controller. One that is much shorter is not only that resistor: something else draws current, or the record is wrong.',
  source: published(
    't = R C ln(V0 / V), any text on circuits; 1.5 times either way: common practice, no source',
  ),
  on: 'test',
  needs: { time: 'test.time' },
  fires: `drive main {
  controller { capacitance: 6.8 mF  discharge-resistance: 10 kohm }
  test t1 {
    kind: discharge
    on: controller
    taken: 2026-03-12
    voltage: 98 V
    end-voltage: 20 V
    time: 400 s
#         ^^^^^ 108 s
  }
}`,
  quiet: `drive main {
  controller { capacitance: 6.8 mF  discharge-resistance: 10 kohm }
  test t1 {
    kind: discharge
    on: controller
    taken: 2026-03-12
    voltage: 98 V
    end-voltage: 20 V
    time: 110 s
  }
}`,
  run: ({ time }, lookup) => {
    const discharge = dischargeOf(lookup.block, lookup)
    if (!discharge) return []
    const { computed } = discharge
    const isLong = time.value > factor * computed
    if (!isLong && time.value * factor >= computed) return []
    const [found, limit] = [time.value, Number(computed.toPrecision(3))].map((s) => lookup.show(s, 'time'))
    return unlessReplaced(lookup, [
      at(time, {
        message: `The discharge took ${found}; by capacitance and discharge resistance it takes ${limit}.`,
        todo: isLong
          ? 'Check the discharge resistor before anybody relies on the time.'
          : 'Check the record, and what else discharges the controller.',
        ...(found !== undefined && { found }),
        ...(limit !== undefined && { limit: `about ${limit}` }),
      }),
    ])
  },
})
