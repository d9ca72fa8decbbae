import { at, check, commonPractice } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { formatLoad } from '../../../common/amperes.ts'
import { cableNamed } from '../../cable-named.ts'
import { fitRating } from '../../fixes.ts'
import {
  type CableVerdict,
  fittingRating,
  ratingToCable,
  ratingToLoad,
} from '../../plans/cable-protection.ts'
import { capacityWords } from '../../plans/cable-words.ts'
import { heatAround, heatWords } from '../../plans/fuse-ambient.ts'
import { cableOf } from '../../plans/let-through.ts'

/** What to do where no standard rating suits both the cable and its load (`low`, A). */
const noneFits = ({ carrying, largestStandard }: CableVerdict, low: number): string =>
  reaches(largestStandard, low)
    ? `Use a larger cable first, then choose the fuse. This cable can carry ${capacityWords(carrying)}, too little for any fuse here.`
    : `Ask the makers of fuse and battery. The standard ratings that Shaftwright knows end at ${formatSi(largestStandard, 'current')}.`

export default check({
  id: 'protection/below-load',
  severity: 'error',
  title: 'Fuse rating too low for the load',
  why: 'A fuse loaded near its rating ages and opens in service, when the propeller is needed most.',
  source: commonPractice(
    '1.25 times the continuous current, as in the NEC; here at the lowest voltage of the battery. In warm air 0.5 % less rating for each kelvin above 40 °C, as one fuse maker’s guide prints it',
  ),
  on: 'protection',
  needs: { rating: 'protection.rating' },
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
#           ^^^^^ needs at least
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
  run: ({ rating }, lookup) => {
    const cable = cableOf(lookup.block, lookup)
    const heat = heatAround(lookup.block)
    const judged = ratingToLoad(rating.value, cable, lookup, heat)
    if (!judged || judged.carries) return []
    const { load, low, assumptions } = judged
    const toCable = ratingToCable(rating.value, cable, lookup)
    const found = formatSi(rating.value, 'current')
    return [
      at(rating, {
        message: `The rating is ${found}; the load needs at least ${formatLoad(low)}.`,
        detail: `That is 1.25 times the continuous current of ${formatLoad(load.current, 1)}${heatWords(heat)}. Current: ${load.currentFrom}.`,
        todo:
          toCable && fittingRating(cable, lookup, heat) === undefined
            ? noneFits(toCable, low)
            : 'Use a larger rating that suits the cable, and that the makers of fuse and battery allow.',
        found,
        limit: `at least ${formatLoad(low)}`,
        assumptions,
        related: cableNamed(lookup),
      }),
    ]
  },
  fixes: (_finding, ground) => fitRating(ground),
})
