import { at, check, published } from '../../../../checks/check.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { formatCarried, formatLoad } from '../../../common/amperes.ts'
import { fitRating } from '../../fixes.ts'
import { ratingToCable } from '../../plans/cable-protection.ts'
import { capacityWords } from '../../plans/cable-words.ts'

export default check({
  id: 'protection/above-cable',
  severity: 'error',
  title: 'Fuse rating above what the cable can carry',
  why: 'A fuse protects the cable, not the motor. With too large a fuse, the cable burns before the fuse opens.',
  source: published('33 CFR 183.455(c), with the ampacity after all factors'),
  on: 'protection',
  needs: { rating: 'protection.rating', in: 'protection.in' },
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
#           ^^^^^ allows at most
    in: feed
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
    in: feed
  }
}`,
  run: ({ rating, in: within }, lookup) => {
    const judged = ratingToCable(rating.value, lookup.referred('in'), lookup)
    if (judged?.verdict !== 'above-conductor' && judged?.verdict !== 'not-shown') return []
    const { limit, largest, ratings, carrying, verdict } = judged
    const found = formatSi(rating.value, 'current')
    const isBelow = carrying.ampacity.tables === 'below'
    const allowed = isBelow ? `less than ${formatLoad(largest)}` : `at most ${formatCarried(largest)}`
    const beyond =
      limit.above === 'any-rating'
        ? 'Below 50 V a rating up to 150 % of that is allowed.'
        : 'The next standard rating above that is allowed.'
    return [
      at(rating, {
        ...(verdict === 'not-shown' && { severity: 'warning' as const }),
        message:
          verdict === 'not-shown'
            ? `The rating is ${found}; no table shows what so thin a cable allows.`
            : `The rating is ${found}; the cable allows ${allowed}.`,
        detail: `The cable can carry ${capacityWords(carrying)}.${largest > limit.high && !isBelow ? ` ${beyond}` : ''}`,
        todo:
          verdict === 'not-shown'
            ? 'Use a cable of a size in the tables.'
            : 'Use a smaller rating or a larger cable.',
        found,
        limit: allowed,
        source: published(`${limit.source}, with the ampacity after all factors; ${ratings}`),
        assumptions: carrying.assumptions,
        related: [{ at: within.at, message: 'the cable it is in' }],
      }),
    ]
  },
  fixes: (_finding, ground) => fitRating(ground),
})
