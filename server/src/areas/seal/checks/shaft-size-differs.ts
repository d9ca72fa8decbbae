import { at, check, commonPractice } from '../../../checks/check.ts'

/** More than rounding a size in the other units makes, less than the step to the nearest size there is (35 mm and 1-3/8 in lie 0.075 mm apart).
 * Common practice, no source. */
const sizeTolerance = 0.05e-3

export default check({
  id: 'seal/shaft-size-differs',
  severity: 'error',
  title: 'Seal for another shaft size',
  why: 'A seal for another shaft size leaks, slips or does not fit. Inch and metric shafts of nearly the same size are easy to confuse.',
  source: commonPractice('within 0.05 mm: common practice, no source'),
  on: 'seal',
  needs: { size: 'seal.shaft-size', diameter: 'shaft.diameter' },
  fires: `drive main {
  shaft { diameter: 35 mm }
  seal {
    shaft-size: 32 mm
#               ^^^^^ shaft is 35 mm
  }
}`,
  quiet: `drive main {
  shaft { diameter: 35 mm }
  seal { shaft-size: 35 mm }
}`,
  run: ({ size, diameter }, { show }) =>
    Math.abs(size.value - diameter.value.nominal) <= sizeTolerance
      ? []
      : [
          at(size, {
            message: `The seal fits ${show(size.value, 'length')}, but the shaft is ${show(diameter.value.nominal, 'length')}.`,
            todo: 'Choose a seal for this shaft.',
            found: show(size.value, 'length'),
            limit: show(diameter.value.nominal, 'length'),
            related: [{ at: diameter.at, message: 'the diameter of the shaft' }],
          }),
        ],
})
