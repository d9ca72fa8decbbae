import { saidCarried } from '../../plans/amperes.ts'
import { ratingToCable } from '../../plans/cable-protection.ts'
import { formatSi } from '../../quantity/format.ts'
import { at, check, published } from '../check.ts'
import { fitRating } from '../fix-cable.ts'

export default check({
  id: 'protection/above-cable',
  severity: 'error',
  title: 'Fuse above what the cable carries',
  why: 'A fuse protects the cable, not the motor: the cable burns before a larger one opens.',
  source: published('33 CFR 183.455(c), held against the ampacity after all factors'),
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
    rating: 630 A
#           ^^^^^ above
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
    const judged = ratingToCable(rating.value, context.referred('protects'), context)
    if (judged?.verdict !== 'above-conductor') return []
    const { limit, largest, ratings, carrying } = judged
    const found = formatSi(rating.value, 'current')
    const carries = saidCarried(limit.high)
    const allowed = saidCarried(largest)
    const beyond =
      limit.above === 'any-rating'
        ? `half as much again as the ${carries} that the cable carries, which is allowed below 50 V`
        : `the next standard rating above the ${carries} that the cable carries`
    return [
      at(rating, {
        message: `The rating, ${found}, is above ${largest > limit.high ? `${allowed}, ${beyond}` : `what the cable carries, ${carries}`}.`,
        todo: 'Take a smaller rating or a larger cable. The battery stays live: work for a licensed person.',
        found,
        limit: `at most ${allowed}`,
        source: published(`${limit.source}, held against the ampacity after all factors; ${ratings}`),
        assumptions: carrying.assumptions,
        related: [{ at: protects.at, message: 'the cable it protects' }],
      }),
    ]
  },
  fixes: (_finding, ground) => fitRating(ground),
})
