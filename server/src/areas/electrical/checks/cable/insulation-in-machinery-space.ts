import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'

/** K. ISO 13297 and ISO 10133; ABYC E-11 asks for more. */
const least = 70 + 273.15
const leastOfAbyc = 75 + 273.15

export default check({
  id: 'cable/insulation-in-machinery-space',
  severity: 'error',
  title: 'Insulation that is not made for a machinery space',
  why: 'A machinery space is warm and oily. Insulation rated for less ages there until it cracks, whatever the current.',
  source: published(
    'ISO 13297 as a public summary quotes it: at least 70 °C and oil-resistant in machinery spaces; ABYC E-11 as quoted: at least 75 °C',
  ),
  on: 'cable',
  needs: { insulation: 'cable.insulation', place: 'cable.place' },
  fires: `drive main {
  cable feed {
    insulation: 60 degC
#               ^^^^^^^ at least 70 degC
    place: machinery-space
  }
}`,
  quiet: `drive main {
  cable feed {
    insulation: 75 degC
    place: machinery-space
  }
}`,
  run: ({ insulation, place }) => {
    if (place.value !== 'machinery-space' || reaches(insulation.value, leastOfAbyc)) return []
    const [found, iso, abyc] = [insulation.value, least, leastOfAbyc].map((kelvin) =>
      formatSi(kelvin, 'temperature'),
    ) as [string, string, string]
    const passesIso = reaches(insulation.value, least)
    const limit = passesIso ? abyc : iso
    return [
      at(insulation, {
        ...(passesIso && { severity: 'information' as const }),
        message: `The insulation is rated for ${found}; in a machinery space it needs at least ${limit}.`,
        detail: passesIso ? `ISO 13297 allows ${iso}.` : `ABYC E-11 asks for ${abyc}.`,
        todo: passesIso
          ? 'Use a better insulation if the boat follows ABYC E-11.'
          : 'Use a cable with a better insulation, also against oil.',
        found,
        limit: `at least ${limit}`,
        related: [{ at: place.at, message: 'where it runs' }],
      }),
    ]
  },
})
