import { type Kind, kinds } from '../../quantity/kinds.ts'
import { findUnit } from '../../quantity/units.ts'
import { canBe } from '../../vocabulary/fitting-units.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { declaredAt } from '../declared-at.ts'
import { replace, textAt } from '../fix-text.ts'

/** Units written for one another, the number being meant: pound for pound-force, `35 mm` for a conductor of 35 mm2, kW for kWh,
 * `105 C` without its degree. Common practice, no source. No figure is converted: from one kind to another there is no conversion. */
const confusedUnits: Readonly<Record<string, readonly string[]>> = {
  lb: ['lbf'],
  mm: ['mm2'],
  mm2: ['mm'],
  in: ['in2'],
  in2: ['in'],
  kW: ['kWh'],
  W: ['Wh'],
  kWh: ['kW'],
  Wh: ['W'],
  A: ['Ah'],
  Ah: ['A'],
  J: ['N·m'],
  kJ: ['kN·m'],
  C: ['degC'],
  F: ['degF'],
}

/** What to write instead, where a figure of the one kind is often at hand and the other is not that figure in another unit. */
const instead = (expected: Kind, found: string, written: string): string | undefined => {
  if (expected === 'charge' && found === kinds.energy.words)
    return `Write it in Ah. Energy divided by the nominal voltage gives it: ${written} / nominal.`
  if (expected === 'rotational speed' && found === kinds.frequency.words)
    return 'Write it in rpm, as the rating plate has it: a frequency may be that of the current, and the pole pairs stand between the two.'
  return undefined
}

export default problemCheck({
  id: 'job/unit-wrong-kind',
  problem: 'wrong-kind',
  severity: 'error',
  title: 'Amount of the wrong kind',
  why: 'A mass where a length belongs is a typing error, or a value on the wrong line. A torque is not an energy and an rpm is not a hertz, though their dimensions look alike.',
  source: theLanguage,
  fires: `seal {
  free-length: 3 kg
#              ^^^^ 3 kg is a mass; a length was expected
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p, written) => ({
    message: `${written} is ${p.found}; ${kinds[p.expected].words} was expected.`,
    todo:
      instead(p.expected, p.found, written) ??
      (p.likely === ''
        ? 'Write it without a unit.'
        : `Write it in ${p.likely} or another unit of that kind.`),
    found: `${written}, ${p.found}`,
    limit: kinds[p.expected].words,
    data: { kind: p.expected },
  }),
  fixes: ({ at, data }, { block }) => {
    const [, number = '', unit = ''] = /^(\S+)\s*([^\s\d].*)$/.exec(textAt(at)) ?? []
    return (confusedUnits[unit] ?? [])
      .filter((meant) => findUnit(meant)?.kind === data?.kind && canBe(number, meant, declaredAt(block, at)))
      .map((meant) => ({
        title: `Write ${number} ${meant}`,
        edits: [replace(at, `${number} ${meant}`)],
        preferred: true as const,
        uncovers: true as const,
      }))
  },
})
