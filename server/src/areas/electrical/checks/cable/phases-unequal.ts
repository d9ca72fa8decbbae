import { at, check, commonPractice } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { lengthSpread } from '../../../../engineering/electrical/cable-laying.ts'
import { factOf } from '../../../../job/model.ts'
import { elide } from '../../../../quantity/elide.ts'
import { formatShare } from '../../../../quantity/format-measures.ts'

/** Common practice asks for equal lengths and has no figure: this is ours. */
const mostSpread = 0.05

export default check({
  id: 'cable/phases-unequal',
  severity: 'warning',
  title: 'Phase cables of different lengths',
  why: 'The phase with the shortest cable takes more than its share, and the voltages at the motor differ. It then runs hotter and with a ripple in its torque.',
  source: commonPractice('equal lengths: common practice; that 5 % still count as equal: no source'),
  on: 'cable',
  needs: { lengths: 'cable.phase-lengths' },
  wants: { length: 'cable.length' },
  fires: `drive main {
  cable phases { length: 2.1 m  phase-lengths: U 1.80 m, V 2.10 m, W 1.79 m }
#                                              ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ %
}`,
  quiet: `drive main {
  cable phases { length: 1.8 m  phase-lengths: U 1.80 m, V 1.82 m, W 1.79 m }
}`,
  run: ({ lengths, length }, lookup) => {
    const marks = lengths.value.map(({ mark }) => mark)
    const motor = lookup.near('motor')
    const terminals = motor && factOf(motor, 'motor.terminals')?.value.map(({ name }) => name)
    const wanted = [...new Set(terminals ?? marks)]
    const missing = wanted.filter((mark) => !marks.includes(mark))
    const unknown = marks.filter((mark, index) => !wanted.includes(mark) || marks.indexOf(mark) < index)
    if (missing.length + unknown.length > 0 || marks.length < 3)
      return [
        at(lengths, {
          message: 'The lengths are not those of each phase once.',
          detail: [
            ...(missing.length > 0 ? [`Missing: ${missing.map(elide).join(', ')}.`] : []),
            ...(unknown.length > 0 ? [`Not a terminal, or twice: ${unknown.map(elide).join(', ')}.`] : []),
            `The terminals of the motor are ${terminals ? terminals.map(elide).join(', ') : 'not stated'}.`,
          ].join(' '),
          todo: 'State the length of the cable of each phase, by the terminal of the motor.',
          found: marks.join(', '),
        }),
      ]
    const all = lengths.value.map(({ value }) => value)
    const spread = lengthSpread(all) ?? 0
    const longest = Math.max(...all)
    const show = (metres: number) => lookup.show(metres, 'length')
    const isLonger = length && !reaches(length.value * (1 + mostSpread), longest)
    return [
      ...(reaches(mostSpread, spread)
        ? []
        : [
            at(lengths, {
              message: `The phase cables differ by ${formatShare(spread, 2)} of their length; about ${formatShare(mostSpread, 2)} is usual.`,
              detail: `From ${show(Math.min(...all))} to ${show(longest)}.`,
              todo: 'Make them equally long, of one make, and lay them together.',
              found: formatShare(spread, 2),
              limit: `at most ${formatShare(mostSpread, 2)}`,
            }),
          ]),
      ...(isLonger
        ? [
            at(lengths, {
              message: `The longest phase is ${show(longest)}, but \`length\` is ${show(length.value)}.`,
              detail: 'The voltage drop is calculated with `length`.',
              todo: 'Correct `length` to that of the longest phase.',
              found: show(longest),
              limit: show(length.value),
              related: [{ at: length.at, message: 'its length' }],
            }),
          ]
        : []),
    ]
  },
})
