import { at, check, published } from '../../../../checks/check.ts'
import { largerConductor } from '../../fixes.ts'
import {
  ampacityAtMost,
  type CableAmpacity,
  cableAmpacity,
  canCarry,
  isInsulationOpen,
} from '../../plans/cable-ampacity.ts'
import { ampacityWords, loadingWords } from '../../plans/cable-words.ts'
import { cableCurrent } from '../../plans/design-current.ts'

/** What is wrong, and what to do, by where the tables have a conductor of this size. `isBest`: the insulation is not known, and the best one in the
 * tables would not do. */
function wordsFor(
  { ampacity }: CableAmpacity,
  carrying: 'no' | 'not-shown',
  { carries, current }: ReturnType<typeof loadingWords>,
  isBest: boolean,
): { readonly message: string; readonly todo: string } {
  if (carrying === 'not-shown')
    return {
      message: `No table shows that so thin a cable can carry ${current}.`,
      todo: 'Use a conductor of a size in the tables.',
    }
  const better = isBest ? '' : ', or better insulation'
  const none = isBest ? ' No insulation in the tables would do.' : ''
  return ampacity.tables === 'above'
    ? {
        message: `${isBest ? 'For the best insulation the' : 'The'} tables show ${carries} for it, but it must carry ${current}.`,
        todo: `Use more conductors in parallel${better}.${none} Or ask the cable maker for the figure, and accept it with a concession.`,
      }
    : {
        message: `The cable can carry ${carries}${isBest ? ' with the best insulation,' : ''} but must carry ${current}.`,
        todo: `Use a larger conductor${isBest ? ' or' : ','} more conductors in parallel${better}.${none} Change the fuse to match.`,
      }
}

export default check({
  id: 'cable/undersized',
  severity: 'error',
  title: 'Cable too thin for its current',
  why: 'An overloaded cable gets hot: its insulation ages, softens and burns. A cable can carry less in a warm place and beside other conductors. If the insulation is not stated, the cable is only checked against the best insulation in the tables. Then no finding does not mean that it is thick enough.',
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
  run: ({ conductor }, lookup) => {
    const load = cableCurrent(lookup.block, lookup)
    const isBest = isInsulationOpen(lookup.block)
    const carrying = (isBest ? ampacityAtMost : cableAmpacity)(lookup.block, lookup)
    if (!load.ok || !carrying.ok) return []
    const { current, currentFrom } = load.value
    const { carries, ampacity } = carrying.value
    const can = canCarry(carrying.value, current)
    // In air too hot for the insulation no larger conductor helps: `cable/ambient-too-hot`.
    if (can === 'yes' || carries === 0) return []
    const loading = loadingWords({ current, carries, ampacity })
    return [
      at(conductor, {
        ...(can === 'not-shown' && { severity: 'warning' as const }),
        ...wordsFor(carrying.value, can, loading, isBest),
        detail: `Current: ${currentFrom}. Limit: ${loading.carries}, ${ampacityWords(carrying.value)}`,
        found: loading.current,
        limit: ampacity.tables === 'in' ? `at most ${loading.carries}` : loading.carries,
        assumptions: [...load.value.assumptions, ...carrying.value.assumptions],
        data: { current, carries },
      }),
    ]
  },
  fixes: (_finding, ground) => largerConductor(ground),
})
