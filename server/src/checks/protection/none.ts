import { reaches } from '../../engineering/electrical/guard.ts'
import { endsOf } from '../../plans/cable-circuit.ts'
import { isProtected } from '../../plans/cable-protection.ts'
import { atHead, check, published } from '../check.ts'
import { fittingRating } from '../fix-cable.ts'
import { addAfter, freeName } from '../fix-text.ts'

/** A cable to a fuse is that fuse's lead up to 40 in, 33 CFR 183.455(b)(2). */
const longestLead = 40 * 0.0254

export default check({
  id: 'protection/none',
  severity: 'error',
  title: 'Battery cable without protection',
  why: 'A battery cannot be switched off: behind a short circuit stands all its current, until something opens or burns.',
  source: published('33 CFR 183.455: overcurrent protection at the source of power'),
  on: 'cable',
  needs: { from: 'cable.from', to: 'cable.to' },
  wants: { length: 'cable.length' },
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
  run: ({ length }, context) => {
    const ends = endsOf(context.block, context).map((end) => end?.kind)
    if (!ends.includes('battery') || isProtected(context.block, context)) return []
    if (ends.includes('protection') && (!length || reaches(longestLead, length.value))) return []
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
      `  rating:   ${amps} A`,
      `  protects: ${block.name}`,
      '}',
    ]
    return [
      { title: `Protect it with ${amps} A`, edits: [addAfter(block, lines.join('\n'))], preferred: true },
    ]
  },
})
