import { atHead, check, published } from '../../../../checks/check.ts'
import { addAfter, freeName } from '../../../../checks/fix-text.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { fittingRating, isProtected, needsProtection } from '../../plans/cable-protection.ts'

export default check({
  id: 'protection/none',
  severity: 'error',
  title: 'Battery cable without a fuse or breaker',
  why: 'A battery cannot be switched off. It feeds a short circuit with all its current until something opens or burns.',
  source: published('33 CFR 183.455: overcurrent protection at the source of power'),
  on: 'cable',
  needs: { from: 'cable.from', to: 'cable.to' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed {
# ^^^^^^^^^^ No fuse
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
  run: (_facts, lookup) => {
    if (!needsProtection(lookup.block, lookup) || isProtected(lookup.block, lookup)) return []
    return [
      atHead(lookup.block, {
        message: 'No fuse or breaker protects this cable from the battery.',
        todo: 'Add a `protection` block near the battery, with `protects`.',
        data: { add: 'protection' },
      }),
    ]
  },
  fixes: (_finding, { block, lookup }) => {
    const amps = lookup && fittingRating(lookup.block, lookup)
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
        title: `Add a fuse of ${formatSi(amps, 'current')}`,
        edits: [addAfter(block, lines.join('\n'))],
        preferred: true,
      },
    ]
  },
})
