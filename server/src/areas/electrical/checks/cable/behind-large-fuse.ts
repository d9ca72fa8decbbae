import { at, check, published } from '../../../../checks/check.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { formatCarried, formatLoad } from '../../../common/amperes.ts'
import { addFuse } from '../../fixes.ts'
import { fedBeyond } from '../../plans/cable-protection.ts'
import { capacityWords } from '../../plans/cable-words.ts'

export default check({
  id: 'cable/behind-large-fuse',
  severity: 'error',
  title: 'Cable behind too large a fuse',
  why: 'A fuse protects every conductor behind it, up to the next fuse. Where the conductor becomes smaller, the fuse before it lets through more than the smaller one can carry, and it burns.',
  source: published(
    '33 CFR 183.455(a), (b): overcurrent protection where each conductor begins and where its size is reduced; (c): how large',
  ),
  on: 'cable',
  needs: { conductor: 'cable.conductor', from: 'cable.from', to: 'cable.to' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 2 kW  efficiency: 90 % }
  controller { input: 72..120 V  efficiency: 95 % }
  cable lead { from: house  to: main-fuse  conductor: 95 mm2  length: 1 m  insulation: 105 degC  place: open }
  protection main-fuse { kind: fuse  rating: 400 A }
  cable feed {
    from: main-fuse
    to: controller
    conductor: 4 mm2
#              ^^^^^ 400 A
    length: 2 m
    insulation: 105 degC
    place: open
  }
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 2 kW  efficiency: 90 % }
  controller { input: 72..120 V  efficiency: 95 % }
  cable lead { from: house  to: main-fuse  conductor: 95 mm2  length: 1 m  insulation: 105 degC  place: open }
  protection main-fuse { kind: fuse  rating: 400 A }
  cable feed {
    from: main-fuse
    to: controller
    conductor: 120 mm2
    length: 2 m
    insulation: 105 degC
    place: open
  }
}`,
  run: ({ conductor }, lookup) => {
    const found = fedBeyond(lookup.block, lookup)
    if (!found) return []
    const { amps, share, allowed, carrying, devices, isLead } = found
    const [letThrough, taken] = [formatLoad(amps), formatLoad(amps * share)]
    const isBelow = carrying.ampacity.tables === 'below'
    const limit = isBelow ? `less than ${formatLoad(allowed)}` : `at most ${formatCarried(allowed)}`
    const what =
      devices.length > 1
        ? `fuses or breakers of ${letThrough} together`
        : `a fuse or breaker of ${letThrough}`
    return [
      at(conductor, {
        message:
          share === 1
            ? `It ${isLead ? 'leads to' : 'lies behind'} ${what}; it allows ${limit}.`
            : `It takes ${taken} ${isLead ? 'on the way to' : 'behind'} ${what}; it allows ${limit}.`,
        detail: `It can carry ${capacityWords(carrying)}.${share === 1 ? '' : ' Cables side by side share a current by their sections and lengths.'}`,
        todo: isLead
          ? 'Use a larger cable, or a smaller fuse or breaker.'
          : 'Use a larger cable, or fit a smaller fuse or breaker where it begins.',
        found: taken,
        limit,
        assumptions: carrying.assumptions,
        related: devices.map(({ head, rating }) => ({
          at: head,
          message: `lets ${formatSi(rating, 'current')} through`,
        })),
      }),
    ]
  },
  fixes: (_finding, ground) => addFuse(ground),
})
