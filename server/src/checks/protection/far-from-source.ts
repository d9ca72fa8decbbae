import { reaches } from '../../engineering/compare.ts'
import { at, check, published } from '../check.ts'

/** 7 in and 40 in, 33 CFR 183.455(b)(1) and (2). */
const bare = 7 * 0.0254
const sheathed = 40 * 0.0254

export default check({
  id: 'protection/far-from-source',
  severity: 'error',
  title: 'Fuse far from the battery',
  why: 'Between battery and fuse nothing opens a short circuit: that length of conductor burns.',
  source: published(
    '33 CFR 183.455(b): within 7 in of the source of power, within 40 in inside a sheath or enclosure',
  ),
  on: 'protection',
  needs: { distance: 'protection.from-source' },
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
  }
  protection main-fuse {
    rating: 315 A
    protects: feed
    from-source: 1.2 m
#                ^^^^^ at most
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
  }
  protection main-fuse {
    rating: 315 A
    protects: feed
    from-source: 150 mm
  }
}`,
  run: ({ distance }, context) => {
    if (reaches(bare, distance.value)) return []
    const found = context.show(distance.value, 'length')
    const inSheath = reaches(sheathed, distance.value)
    const limit = context.show(inSheath ? bare : sheathed, 'length')
    return [
      at(distance, {
        ...(inSheath && { severity: 'information' as const }),
        message: inSheath
          ? `It stands ${found} from the source: more than ${limit} is allowed only where the conductor lies in a sheath or enclosure all the way.`
          : `It stands ${found} from the source: at most ${limit} is allowed, and that only in a sheath or enclosure.`,
        todo: 'Place it at the battery. The battery stays live: work for a licensed person.',
        found,
        limit: `at most ${limit}`,
      }),
    ]
  },
})
