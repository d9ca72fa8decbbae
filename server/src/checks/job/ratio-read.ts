import { formatNumber } from '../../quantity/format.ts'
import { at, check, theLanguage } from '../check.ts'
import { replace, textAt } from '../fix-text.ts'

export default check({
  id: 'job/ratio-read',
  on: 'gear',
  severity: 'information',
  title: 'Ratio with a colon',
  why: 'Some write 1:2.5 and some 2.5:1 for the same reduction. A plain number, the turns of the motor for one turn of the shaft, leaves no doubt.',
  source: theLanguage,
  fires: `gear {
  ratio: 1:2.5
#        ^^^^^ 2.5 motor turns for each shaft turn
}`,
  quiet: `gear { ratio: 2.5 }`,
  needs: { ratio: 'gear.ratio' },
  run: ({ ratio }) => {
    const [part] = ratio.node.entries[0]?.parts ?? []
    if (ratio.origin || part?.type !== 'proportion' || ratio.value === 1) return []
    // Nobody writes a reduction with a number below one: it may be meant as it stands.
    const isOdd = [part.left, part.right].some((side) => side.type === 'amount' && Number(side.number) < 1)
    const turns = formatNumber(ratio.value)
    return [
      at(ratio, {
        ...(isOdd && { severity: 'warning' as const }),
        message: `Read as a reduction: ${turns} motor turns for each shaft turn.`,
        todo: `Write ${turns} if that is right. If the shaft turns faster than the motor, write ${formatNumber(1 / ratio.value)}.`,
        found: turns,
        data: { replace: turns },
      }),
    ]
  },
  fixes: ({ at: place, data }) =>
    data?.replace === undefined || data.replace === textAt(place)
      ? []
      : [{ title: `Write ${data.replace}`, edits: [replace(place, data.replace)] }],
})
