import { saidCarried, saidLoad } from '../../plans/amperes.ts'
import { fittingRating, ratingToCable, ratingToLoad } from '../../plans/cable-protection.ts'
import { formatSi } from '../../quantity/format.ts'
import { at, check, commonPractice } from '../check.ts'
import { fitRating } from '../fix-cable.ts'

export default check({
  id: 'protection/below-load',
  severity: 'error',
  title: 'Fuse too small for the load',
  why: 'A fuse that is loaded near its rating ages and opens in service: under way, when the propeller is needed most.',
  source: commonPractice(
    '1.25 times the continuous current, as the NEC asks; here at the lowest voltage of the battery',
  ),
  on: 'protection',
  needs: { rating: 'protection.rating', protects: 'protection.protects' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
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
  protection main-fuse {
    rating: 200 A
#           ^^^^^ is below
    protects: feed
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
  protection main-fuse {
    rating: 315 A
    protects: feed
  }
}`,
  run: ({ rating, protects }, context) => {
    const cable = context.referred('protects')
    const judged = ratingToLoad(rating.value, cable, context)
    if (!judged || judged.carries) return []
    const { load, low } = judged
    const carrying = ratingToCable(rating.value, cable, context)?.carrying
    const found = formatSi(rating.value, 'current')
    return [
      at(rating, {
        message: `The rating, ${found}, is below 1.25 times the continuous current of ${saidLoad(load.current, 1)} (${load.currentFrom}).`,
        todo:
          carrying?.carries !== undefined && fittingRating(cable, context) === undefined
            ? `The cable is too thin for any fuse here (it carries ${saidCarried(carrying.carries)}): take a larger cable first, then the fuse. The battery stays live: work for a licensed person.`
            : 'Take a larger rating that the cable can still carry, as the makers of fuse and battery allow. The battery stays live: work for a licensed person.',
        found,
        limit: `at least ${saidLoad(low)}`,
        assumptions: load.assumptions,
        related: [{ at: protects.at, message: 'the cable it protects' }],
      }),
    ]
  },
  fixes: (_finding, ground) => fitRating(ground),
})
