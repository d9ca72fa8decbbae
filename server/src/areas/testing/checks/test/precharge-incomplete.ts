import { at, check, commonPractice } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatShare } from '../../../../quantity/format-measures.ts'
import { unlessReplaced } from '../../history.ts'

/** Share of the bank's voltage at which a contactor may close. Common practice: a tutorial on precharge. */
const enough = 0.95
/** Above this share of its own supply nothing is charged; instruments differ. Common practice, no source. */
const most = 1.05

export default check({
  id: 'test/precharge-incomplete',
  severity: 'error',
  title: 'Precharge that ends too early',
  why: 'The contactor closes on the difference that is left. With milliohms in the circuit even 5 % of 96 V drive kiloamperes for microseconds, which weld contacts and wear capacitors.',
  source: commonPractice('close at 95 % of the battery or above: a tutorial on precharge'),
  on: 'test',
  needs: { kind: 'test.kind', voltage: 'test.voltage', end: 'test.end-voltage' },
  fires: `drive main {
  controller { capacitance: 6.8 mF }
  test t1 {
    kind: precharge
    on: controller
    taken: 2026-03-12
    voltage: 98 V
    end-voltage: 80 V
#                ^^^^ 81.6 %
    time: 1.2 s
  }
}`,
  quiet: `drive main {
  controller { capacitance: 6.8 mF }
  test t1 {
    kind: precharge
    on: controller
    taken: 2026-03-12
    voltage: 98 V
    end-voltage: 95 V
    time: 1.2 s
  }
}`,
  run: ({ kind, voltage, end }, lookup) => {
    if (kind.value !== 'precharge' || voltage.value <= 0) return []
    const share = end.value / voltage.value
    const found = formatShare(share)
    const related = [{ at: voltage.at, message: 'the voltage of the battery' }]
    if (reaches(share, enough) && reaches(most, share)) return []
    return unlessReplaced(lookup, [
      share > 1
        ? at(end, {
            message: `Precharge ends at ${found} of the voltage of the battery.`,
            todo: 'Correct the voltages: it cannot end above the battery.',
            found,
            limit: 'at most 100 %',
            related,
          })
        : at(end, {
            message: `Precharge ends at ${found} of the voltage of the battery; at least 95 % is usual.`,
            todo: 'Set precharge to last longer, or check its resistor and what draws current meanwhile.',
            found,
            limit: 'at least 95 %',
            related,
          }),
    ])
  },
})
