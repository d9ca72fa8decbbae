import { at, check, theLanguage } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { factOf } from '../../../../job/model.ts'
import { isSwitch } from '../../plans/dc-parts.ts'

export default check({
  id: 'protection/beyond-cable',
  severity: 'error',
  title: 'Fuse or switch past the end of its cable',
  why: 'Its place is measured along the cable from the `from` end. Past the other end there is no cable, so the place is wrong or the length is.',
  source: theLanguage,
  on: ['protection', 'isolator', 'contactor'],
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  controller { efficiency: 96 % }
  protection main-fuse {
    rating: 315 A
    in: feed
    at: 15 m
#       ^^^^ only 2.5 m
  }
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  controller { efficiency: 96 % }
  protection main-fuse {
    rating: 315 A
    in: feed
    at: 15 cm
  }
}`,
  run: (_facts, lookup) => {
    const { block } = lookup
    const { kind } = block
    const place = isSwitch(kind) ? factOf(block, `${kind}.at`) : undefined
    const cable = lookup.referred('in')
    const length = cable && factOf(cable, 'cable.length')
    if (!place || !length || reaches(length.value, place.value)) return []
    const [found, limit] = [place.value, length.value].map((si) => lookup.show(si, 'length'))
    return [
      at(place, {
        message: `It is ${found} along a cable that is only ${limit} long.`,
        todo: 'Correct the place, or the length of the cable. The place is measured from the `from` end.',
        ...(found !== undefined && { found }),
        limit: `at most ${limit}`,
        related: [{ at: length.at, message: 'the length of the cable' }],
      }),
    ]
  },
})
