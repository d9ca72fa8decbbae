import { at, check, commonPractice } from '../../../checks/check.ts'
import { factOf } from '../../../job/model.ts'
import { formatNumber } from '../../../quantity/format.ts'
import { formatLimit } from '../../../quantity/format-measures.ts'
import { usualTolerances } from '../plans/tolerance.ts'

/** A stated limit of more times the usual one is most often a slip, such as 1.0 mm for 0.10 mm. */
const farAbove = 3

export default check({
  id: 'alignment/limit-above-usual',
  severity: 'warning',
  title: 'Stated alignment limit far above the usual one',
  why: 'A reading is judged by the limit that the coupling states. A decimal point in the wrong place lets any machine pass. A limit of more than three times the usual one is a warning; with the origin `[maker]` it is information, because the maker of a flexible coupling may allow more. The verdict uses the stated limit all the same.',
  source: commonPractice(
    'three times the usual limit, no source; usual: 0.001 of the diameter, for a flexible coupling also the table by speed',
  ),
  on: 'coupling',
  plan: 'goes-on',
  fires: `drive main {
  coupling { flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 5 mm  offset: max 0.15 mm }
#                                                                            ^^^^^^^^ 45 times the usual one
}`,
  quiet: `drive main {
  coupling { flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
}`,
  run: (_facts, lookup) => {
    const { block, system } = lookup
    const usual = usualTolerances(block, lookup)
    if (!usual) return []
    return (['gap-variation', 'offset'] as const).flatMap((name) => {
      const fact = factOf(block, `coupling.${name}`)
      const stated = fact?.value.high
      const { limit, limitFrom } = usual[name]
      if (!fact || stated === undefined || stated <= farAbove * limit) return []
      const isMakers = fact.provenance?.words.includes('maker') === true
      const found = formatLimit(stated, system)
      return [
        at(fact, {
          ...(isMakers && { severity: 'information' }),
          message: `The limit for ${name.replace('-', ' ')}, ${found}, is ${formatNumber(stated / limit, 2)} times the usual one.`,
          detail: `Usual: ${limitFrom}.`,
          todo: isMakers
            ? 'Compare the number and its unit with the data of the maker.'
            : 'Check the number and its unit. If the maker allows it, mark it `[maker]`.',
          found,
          limit: `at most ${farAbove} times the usual limit`,
        }),
      ]
    })
  },
})
