import { at, check, commonPractice } from '../check.ts'

/** What two ways of writing one size may differ by (35 mm, 1 3/8 in): less than the step to the next size. Common practice, no source. */
const slack = (diameter: number): number => Math.max(0.1e-3, 0.005 * diameter)

export default check({
  id: 'seal/shaft-size-differs',
  severity: 'error',
  title: 'Seal for another shaft',
  why: 'A rotor on a shaft it was not made for leaks, slips, or does not go on. Inch and metric shafts of nearly one size are the usual trap.',
  source: commonPractice('within 0.5 % or 0.1 mm, whichever is more: common practice, no source'),
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
    Math.abs(size.value - diameter.value.nominal) <= slack(diameter.value.nominal)
      ? []
      : [
          at(size, {
            message: `The seal is for a shaft of ${show(size.value, 'length')}; the shaft is ${show(diameter.value.nominal, 'length')}.`,
            todo: 'Take the seal made for this shaft.',
            found: show(size.value, 'length'),
            limit: show(diameter.value.nominal, 'length'),
            related: [{ at: diameter.at, message: 'the diameter of the shaft' }],
          }),
        ],
})
