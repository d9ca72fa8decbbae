import { at, check, theLanguage } from '../../../../checks/check.ts'
import { elide } from '../../../../quantity/elide.ts'
import { endsOf } from '../../plans/cable-circuit.ts'

const job = (to: string) => `battery aft { nominal: 48 V  window: 42..56 V }
battery forward { nominal: 48 V  window: 42..56 V }
busbar bus { current: 300 A }
cable link {
  from: aft
  to: ${to}
  conductor: 95 mm2
  length: 0.4 m
  insulation: 105 degC
  pole: series
}`

export default check({
  id: 'cable/series-ends',
  severity: 'error',
  title: 'Cable in series that does not join two batteries',
  why: 'A cable in series joins the negative of one battery to the positive of the next, and the voltages of the two add up. With any other part at an end it makes no string, so each battery is checked by itself.',
  source: theLanguage,
  on: 'cable',
  needs: { from: 'cable.from', to: 'cable.to', pole: 'cable.pole' },
  fires: `${job('bus')}`.replace('to: bus\n', 'to: bus\n#     ^^^ bus is no battery\n'),
  quiet: job('forward'),
  run: ({ from, to, pole }, lookup) => {
    if (pole.value !== 'series') return []
    const ends = endsOf(lookup.block, lookup)
    const which = ends.findIndex((end) => end && end.kind !== 'battery')
    const end = [from, to][which]
    if (!end) return []
    return [
      at(end, {
        message: `A cable in series joins two batteries; ${elide(end.value)} is no battery.`,
        todo: 'Name the battery. Write a fuse or switch between the batteries with `in`. Or remove `pole: series`.',
        found: end.value,
        related: [{ at: pole.at, message: 'in series' }],
      }),
    ]
  },
})
