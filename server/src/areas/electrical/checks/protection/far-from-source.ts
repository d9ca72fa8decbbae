import { atHead, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { factOf } from '../../../../job/model.ts'
import { leadTo } from '../../plans/let-through.ts'

/** 7 in and 40 in, 33 CFR 183.455(b)(1) and (2). */
const bare = 7 * 0.0254
const sheathed = 40 * 0.0254

const job = (distance: string) => `battery house { nominal: 96 V  window: 84..108 V }
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
    in: feed
    at: ${distance}
  }
}`

export default check({
  id: 'protection/far-from-source',
  severity: 'error',
  title: 'Fuse too far from the battery',
  why: 'Nothing stops a short circuit between battery and fuse: that length of conductor burns. What counts is all conductor between them, through busbars and switches too.',
  source: published(
    '33 CFR 183.455(b): within 7 in of the source of power, within 40 in inside a sheath or enclosure',
  ),
  on: 'protection',
  fires: job('1.2 m').replace('1.2 m', '1.2 m\n#       ^^^^^ at most'),
  quiet: job('150 mm'),
  run: (_facts, lookup) => {
    const { block } = lookup
    const distance = leadTo(block, lookup)
    if (distance === undefined || reaches(bare, distance)) return []
    const found = lookup.show(distance, 'length')
    const inSheath = reaches(sheathed, distance)
    const limits = { bare: lookup.show(bare, 'length'), sheathed: lookup.show(sheathed, 'length') }
    const limit = inSheath ? limits.bare : limits.sheathed
    const written = factOf(block, 'protection.at')
    return [
      {
        ...atHead(block, {
          ...(inSheath && { severity: 'information' as const }),
          message: `The distance to the battery is ${found}; at most ${limit} is allowed.`,
          detail: inSheath
            ? `Inside a sheath or enclosure all the way, ${limits.sheathed} is allowed.`
            : `That is the limit inside a sheath or enclosure. Without one it is ${limits.bare}.`,
          todo: inSheath
            ? 'Move it to the battery, or make sure that a sheath or enclosure covers the conductor.'
            : 'Move it to the battery.',
          found,
          limit: `at most ${limit}`,
        }),
        ...(written && { at: written.at }),
      },
    ]
  },
})
