import { fittingRating, isProtected, needsProtection } from '../../plans/cable-protection.ts'
import { formatSi } from '../../quantity/format.ts'
import { atHead, check, published } from '../check.ts'
import { addAfter, freeName } from '../fix-text.ts'

export default check({
  id: 'protection/none',
  severity: 'error',
  title: 'Battery cable without protection',
  why: 'A battery cannot be switched off: behind a short circuit stands all its current, until something opens or burns.',
  source: published('33 CFR 183.455: overcurrent protection at the source of power'),
  on: 'cable',
  needs: { from: 'cable.from', to: 'cable.to' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed {
# ^^^^^^^^^^ nothing protects
    from: house
    to: controller
    conductor: 95 mm2
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
  protection main-fuse {
    rating: 315 A
    protects: feed
  }
}`,
  run: (_facts, context) => {
    if (!needsProtection(context.block, context) || isProtected(context.block, context)) return []
    return [
      atHead(context.block, {
        message: 'This cable comes from a battery, and nothing protects it.',
        todo: 'Add a protection block with `protects`, near the battery. A battery stays live whatever is switched off: fitting it is work for a licensed person.',
        data: { add: 'protection' },
      }),
    ]
  },
  fixes: (_finding, { block, lookup }) => {
    const amps = lookup && fittingRating(block, lookup)
    if (!block?.name || amps === undefined) return []
    const name = freeName(`${block.name}-fuse`, (taken) => lookup?.named(taken) !== undefined)
    const lines = [
      `protection ${name} {`,
      '  kind:     fuse',
      `  rating:   ${formatSi(amps, 'current')}`,
      `  protects: ${block.name}`,
      '}',
    ]
    return [
      {
        title: `Protect it with ${formatSi(amps, 'current')}`,
        edits: [addAfter(block, lines.join('\n'))],
        preferred: true,
      },
    ]
  },
})
