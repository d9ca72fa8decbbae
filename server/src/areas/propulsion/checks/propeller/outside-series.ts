import { at, check } from '../../../../checks/check.ts'
import { seriesRange } from '../../../../engineering/propulsion/propeller-series.ts'
import { holds } from '../../../../quantity/band.ts'
import { formatNumber } from '../../../../quantity/format.ts'
import { formatShare } from '../../../../quantity/format-measures.ts'
import { series } from '../../sources.ts'

const range = (from: number, to: number): string => `${formatNumber(from)} to ${formatNumber(to)}`

export default check({
  id: 'propeller/outside-series',
  severity: 'warning',
  title: 'Propeller outside the series',
  why: 'Thrust and torque are calculated from the Wageningen B-series. It holds for 2 to 7 blades, a pitch of 0.5 to 1.4 of the diameter and a blade area of 30 to 105 %. Beyond that nothing is calculated.',
  source: series,
  on: 'propeller',
  needs: { diameter: 'propeller.diameter', pitch: 'propeller.pitch' },
  wants: { blades: 'propeller.blades', area: 'propeller.blade-area-ratio' },
  fires: `drive main {
  propeller {
    diameter: 460 mm
    pitch: 180 mm
#          ^^^^^^ 0.3913
  }
}`,
  quiet: `drive main {
  propeller { diameter: 460 mm  pitch: 340 mm }
}`,
  run: ({ diameter, pitch, blades, area }) => {
    const todo =
      'Correct it if it is wrong. Otherwise use the curves of its maker: power and range are not calculated here.'
    const ratio = pitch.value / diameter.value
    return [
      ...(holds(seriesRange.pitchRatio, ratio)
        ? []
        : [
            at(pitch, {
              message: `The pitch is ${formatNumber(ratio)} of the diameter; the series has ${range(seriesRange.pitchRatio.low, seriesRange.pitchRatio.high)}.`,
              todo,
              found: formatNumber(ratio),
              limit: range(seriesRange.pitchRatio.low, seriesRange.pitchRatio.high),
            }),
          ]),
      ...(!blades || holds(seriesRange.blades, blades.value)
        ? []
        : [
            at(blades, {
              message: `The propeller has ${blades.value} blades; the series has 2 to 7.`,
              todo,
              found: String(blades.value),
              limit: range(seriesRange.blades.low, seriesRange.blades.high),
            }),
          ]),
      ...(!area || holds(seriesRange.areaRatio, area.value)
        ? []
        : [
            at(area, {
              message: `The blade area is ${formatShare(area.value, 3)}; the series has 30 to 105 %.`,
              todo,
              found: formatShare(area.value, 3),
              limit: '30 % to 105 %',
            }),
          ]),
    ]
  },
})
