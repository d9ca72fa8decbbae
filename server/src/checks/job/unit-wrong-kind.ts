import { kinds } from '../../quantity/kinds.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/unit-wrong-kind',
  problem: 'wrong-kind',
  severity: 'error',
  title: 'Amount of the wrong kind',
  why: 'A mass where a length belongs is a slip of the pen, or a value on the wrong line. A torque is not an energy and an rpm is not a hertz, though their dimensions look alike.',
  source: theLanguage,
  fires: `seal {
  free-length: 3 kg
#              ^^^^ 3 kg is a mass; a length was expected
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p, written) => ({
    message: `${written} is ${p.found}; ${kinds[p.expected].words} was expected.`,
    todo:
      p.expected === 'charge' && p.found === kinds.energy.words
        ? `Write it in Ah. Energy divided by the nominal voltage gives it: ${written} / nominal.`
        : p.likely === ''
          ? 'Write it without a unit.'
          : `Write it in ${p.likely} or another unit of that kind.`,
    found: `${written}, ${p.found}`,
    limit: kinds[p.expected].words,
    ...(p.likely !== '' && { data: { unit: p.likely } }),
  }),
})
