import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { leastBendRadius, leastOuterDiameter } from '../../../../engineering/electrical/cable-laying.ts'

export default check({
  id: 'cable/bend-tight',
  severity: 'error',
  title: 'Cable bent too tightly',
  why: 'A tight bend breaks strands and stretches the insulation at the outside, where it later cracks.',
  source: published(
    'a public table of a cable maker: fixed, 4 times the diameter up to 25 mm, 6 times above; class rules for ships: 4 times',
  ),
  on: 'cable',
  needs: { radius: 'cable.bend-radius' },
  wants: { least: 'cable.min-bend-radius', diameter: 'cable.outer-diameter', conductor: 'cable.conductor' },
  fires: `drive main {
  cable feed { conductor: 95 mm2  outer-diameter: 19 mm  bend-radius: 60 mm }
#                                                                     ^^^^^ 76 mm
}`,
  quiet: `drive main {
  cable feed { conductor: 95 mm2  outer-diameter: 19 mm  bend-radius: 80 mm }
}`,
  run: ({ radius, least, diameter, conductor }, lookup) => {
    const isOpen = (fact: string) => lookup.block.unread.has(fact) || lookup.block.blanks.has(fact)
    if (isOpen('min-bend-radius') || (!least && isOpen('outer-diameter'))) return []
    const show = (metres: number) => lookup.show(metres, 'length')
    const limit =
      least?.value ??
      (diameter
        ? leastBendRadius(diameter.value)
        : conductor && leastBendRadius(leastOuterDiameter(conductor.value)))
    const isBound = !least && !diameter
    if (limit !== undefined && !reaches(radius.value, limit))
      return [
        at(radius, {
          message: `The bend has a radius of ${show(radius.value)}; at least ${show(limit)} is needed.`,
          detail: least
            ? 'As its maker allows.'
            : isBound
              ? 'That follows from its copper alone. With its insulation it needs more.'
              : `${limit / (diameter?.value ?? limit) > 5 ? 'Six' : 'Four'} times the outer diameter, for a fixed cable without a screen.`,
          todo: 'Lay the cable in a wider bend.',
          found: show(radius.value),
          limit: `at least ${show(limit)}`,
          ...(!least && { assumptions: ['the cable is fixed and has no screen or metal covering'] }),
        }),
      ]
    return isBound
      ? [
          at(radius, {
            severity: 'information',
            message: 'Whether the bend is too tight is not known: the cable states no diameter.',
            todo: 'State `min-bend-radius` as its maker does, or `outer-diameter`.',
            found: show(radius.value),
          }),
        ]
      : []
  },
})
