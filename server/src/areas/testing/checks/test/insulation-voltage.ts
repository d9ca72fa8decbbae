import { at, check, published, type Reported } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { insulationTestVoltage } from '../../../../engineering/insulation/minimum.ts'
import { type Block, factOf } from '../../../../job/model.ts'
import { formatBand } from '../../../../quantity/format.ts'
import type { Lookup } from '../../../../store/lookup.ts'
import { highestOfBank } from '../../../electrical/plans/banks-around.ts'
import { unlessReplaced } from '../../history.ts'
import { partOf } from '../../plans/test-log.ts'

/** What a part may be tested with, V. */
function voltagesFor(
  part: Block,
  lookup: Lookup,
): { readonly low: number; readonly high?: number } | undefined {
  if (part.kind === 'motor') {
    const volts = factOf(part, 'motor.voltage')?.value
    return volts === undefined ? { low: 250 } : insulationTestVoltage(volts)
  }
  if (part.kind === 'cable') return { low: 250, high: 1000 }
  if (part.kind !== 'battery') return undefined
  const low = highestOfBank(part, lookup, 1)
  return low === undefined ? undefined : { low }
}

export default check({
  id: 'test/insulation-voltage',
  severity: 'warning',
  title: 'Insulation tested with an unusual voltage',
  why: 'With too low a voltage weak insulation passes. With too high a voltage sound insulation is damaged. What is connected to the winding, such as the controller and the sensor, is disconnected first: the tester destroys it.',
  source: published(
    'IEEE 43: 500 V DC below 1 kV. 250 V for windings of low voltage, and 250 to 1000 V for cables: common practice, no source',
  ),
  on: 'test',
  needs: { kind: 'test.kind', voltage: 'test.voltage' },
  fires: `drive main {
  motor propulsion { voltage: 58 V }
  test t1 {
    kind: insulation-resistance
    on: propulsion
    taken: 2026-03-12
    voltage: 20 V
#            ^^^^ 250 V to 500 V
    resistance: 180 Mohm
    temperature: 18 degC
  }
}`,
  quiet: `drive main {
  motor propulsion { voltage: 58 V }
  test t1 {
    kind: insulation-resistance
    on: propulsion
    taken: 2026-03-12
    voltage: 500 V
    resistance: 180 Mohm
    temperature: 18 degC
  }
}`,
  run: ({ kind, voltage }, lookup): readonly Reported[] => {
    const part = partOf(lookup)
    const band = part && kind.value === 'insulation-resistance' ? voltagesFor(part, lookup) : undefined
    if (!part || !band) return []
    const isLow = !reaches(voltage.value, band.low)
    if (!isLow && (band.high === undefined || reaches(band.high, voltage.value))) return []
    const limit = formatBand(band, 'voltage')
    return unlessReplaced(lookup, [
      at(voltage, {
        message: `The insulation was tested with ${lookup.show(voltage.value, 'voltage')}; usual: ${limit}.`,
        detail: isLow ? 'So low a voltage proves nothing.' : 'So high a voltage can damage the insulation.',
        todo: isLow
          ? 'Measure again with the voltage that the maker states.'
          : 'Check with the maker that the part stands this voltage.',
        found: lookup.show(voltage.value, 'voltage'),
        limit,
      }),
    ])
  },
})
