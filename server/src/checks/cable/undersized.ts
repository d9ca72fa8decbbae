import { type CableAmpacity, cableAmpacity, canCarry } from '../../plans/cable-ampacity.ts'
import { ampacityWords, loadingWords } from '../../plans/cable-words.ts'
import { cableCurrent } from '../../plans/design-current.ts'
import { at, check, published } from '../check.ts'
import { largerConductor } from '../fix-cable.ts'

const largerOrMore =
  'Use a larger conductor, more conductors in parallel, or better insulation. Change the fuse to match.'

/** What is wrong, and what to do, by where the tables have a conductor of this size. */
function wordsFor(
  { ampacity }: CableAmpacity,
  carrying: 'no' | 'not-shown',
  said: ReturnType<typeof loadingWords>,
): { readonly message: string; readonly todo: string } {
  if (carrying === 'not-shown')
    return {
      message: `No table shows that so thin a cable can carry ${said.current}.`,
      todo: 'Use a conductor of a size in the tables.',
    }
  return ampacity.tables === 'above'
    ? {
        message: `The tables show ${said.carries} for this cable, but it must carry ${said.current}.`,
        todo: 'Use more conductors in parallel, or better insulation. Or ask the cable maker for the figure, and accept it with a concession.',
      }
    : {
        message: `The cable can carry ${said.carries} but must carry ${said.current}.`,
        todo: largerOrMore,
      }
}

export default check({
  id: 'cable/undersized',
  severity: 'error',
  title: 'Cable too thin for its current',
  why: 'An overloaded cable gets hot: its insulation ages, softens and burns. A cable can carry less in a warm place and beside other conductors.',
  source: published(
    '33 CFR 183.425 table 5 and notes; ISO 10133 / 13297 table A.1 (from memory), never above that table',
  ),
  on: 'cable',
  needs: { conductor: 'cable.conductor' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: controller
    conductor: 25 mm2
#              ^^^^^^ but must carry
    length: 2.5 m
    insulation: 105 degC
    place: machinery-space
  }
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: controller
    conductor: 95 mm2
    length: 2.5 m
    insulation: 105 degC
    place: machinery-space
  }
}`,
  run: ({ conductor }, context) => {
    const load = cableCurrent(context.block, context)
    const carrying = cableAmpacity(context.block, context)
    if (!load.ok || !carrying.ok) return []
    const { current, currentFrom } = load.value
    const { carries, ampacity } = carrying.value
    const can = canCarry(carrying.value, current)
    if (can === 'yes') return []
    const said = loadingWords({ current, carries, ampacity })
    return [
      at(conductor, {
        ...(can === 'not-shown' && { severity: 'warning' as const }),
        ...wordsFor(carrying.value, can, said),
        detail: `Current: ${currentFrom}. Limit: ${said.carries}, ${ampacityWords(carrying.value)}`,
        found: said.current,
        limit: ampacity.tables === 'in' ? `at most ${said.carries}` : said.carries,
        assumptions: [...load.value.assumptions, ...carrying.value.assumptions],
        data: { current, carries },
      }),
    ]
  },
  fixes: (_finding, ground) => largerConductor(ground),
})
