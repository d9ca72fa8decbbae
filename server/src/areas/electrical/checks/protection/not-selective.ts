import { at, check, published } from '../../../../checks/check.ts'
import { elide } from '../../../../quantity/elide.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { selectiveTo } from '../../plans/selective.ts'

const job = (
  rating: string,
) => `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm }
busbar bus { current: 600 A }
cable lead { from: house  to: bus  conductor: 95 mm2  length: 1 m  insulation: 105 degC }
protection main-fuse { kind: fuse  fuse-class: gG  rating: 100 A  in: lead  at: 0 mm }
drive main {
  load winch { power: 2 kW }
  cable to-winch { from: bus  to: winch  conductor: 50 mm2  length: 2 m  insulation: 105 degC }
  protection winch-fuse {
    kind: fuse
    fuse-class: gG
    rating: ${rating}
    in: to-winch
    at: 0 mm
  }
}`

export default check({
  id: 'protection/not-selective',
  severity: 'information',
  title: 'Fuse that does not open before the one behind which it is',
  why: 'A short circuit in one branch then opens the fuse of all of them: a fault in the galley stops the boat.',
  source: published(
    'a fuse maker’s guide: two gG fuse-links are selective from 1.6 : 1 of their ratings on; else by their curves',
  ),
  on: 'protection',
  needs: { rating: 'protection.rating' },
  fires: job('100 A').replace('100 A\n    in: to', '100 A\n#           ^^^^^ main-fuse\n    in: to'),
  quiet: job('50 A'),
  run: ({ rating }, lookup) =>
    selectiveTo(lookup.block, lookup).flatMap(({ device, selective }) => {
      if (selective.selective !== 'no') return []
      const far = lookup.blockOf(device)
      const name = elide(far.name ?? 'the fuse before it')
      return [
        at(rating, {
          message:
            selective.by === 'curves'
              ? `At ${formatSi(selective.current, 'current')} ${name} opens before this one does.`
              : `It may not open before ${name}, which is of the same class and no larger.`,
          todo: `Use a smaller rating here that suits the load, or a larger one before it that suits its cable. Or name ${name} as \`selective-with\` if a table of the maker shows it.`,
          related: [{ at: far.head, message: 'the one before it' }],
        }),
      ]
    }),
})
