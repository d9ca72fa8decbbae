import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { smallestSection } from '../../../../engineering/electrical/smallest-section.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { largerConductor } from '../../fixes.ts'
import { sectionOf } from '../../plans/cable-ampacity.ts'

export default check({
  id: 'cable/below-smallest',
  severity: 'error',
  title: 'Conductor thinner than the rules allow',
  why: 'A very thin conductor breaks by vibration, whatever its current. The rules for boats state a smallest size: 16 AWG or 1 mm², and 18 AWG or 0.75 mm² inside a sheath with other conductors.',
  source: published('33 CFR 183.425(d) and (e); ISO 10133:2012, 7.7'),
  on: 'cable',
  needs: { conductor: 'cable.conductor' },
  fires: `battery house { nominal: 24 V }
drive main {
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: controller
    conductor: 0.7 mm2
#              ^^^^^^^ smallest size allowed
    length: 2.5 m
    insulation: 105 degC
    design-current: 2 A
  }
}`,
  quiet: `battery house { nominal: 24 V }
drive main {
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: controller
    conductor: 1 mm2
    length: 2.5 m
    insulation: 105 degC
    design-current: 2 A
  }
}`,
  run: ({ conductor }) => {
    const { system } = sectionOf(conductor.value)
    const { alone, inSheath, source } = smallestSection(system)
    if (reaches(conductor.value, alone)) return []
    const mayBe = reaches(conductor.value, inSheath)
    const [found, least, leastInSheath] = [conductor.value, alone, inSheath].map((area) =>
      formatSi(area, 'area', system === 'awg' ? 'inch' : 'metric'),
    ) as [string, string, string]
    const limit = mayBe ? least : leastInSheath
    return [
      at(conductor, {
        ...(mayBe && { severity: 'warning' as const }),
        message: `The conductor is ${found}; the smallest size allowed is ${limit}${mayBe ? '' : ' in a sheath'}.`,
        detail: mayBe
          ? `Inside a sheath with other conductors, ${leastInSheath} is allowed.`
          : `A conductor that is not in a sheath with others must be ${least} at least.`,
        todo: mayBe
          ? 'Use a larger conductor, or make sure that a sheath with other conductors covers it.'
          : 'Use a larger conductor.',
        found,
        limit: `at least ${limit}`,
        source: published(source),
      }),
    ]
  },
  fixes: (_finding, ground) => largerConductor(ground),
})
