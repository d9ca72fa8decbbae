import { atHead, fileCheck, theLanguage } from '../check.ts'
import { addFact, blank } from '../fix-text.ts'
import { isSilent } from '../missing.ts'

export default fileCheck({
  id: 'job/concession-without-reason',
  severity: 'error',
  title: 'Concession without a reason',
  why: 'Whoever reads the file next has to know why a fault was accepted. Without a reason the finding counts in full.',
  source: theLanguage,
  fires: `concession alignment/offset-outside {
#<- gives no reason
  on:         main
  granted-by: "design office"
  until:      9999-12-31
}`,
  quiet: `concession alignment/offset-outside {
  on:         main
  reason:     "read again after launch"
  granted-by: "design office"
  until:      9999-12-31
}`,
  file: ({ blocks }) =>
    blocks
      .filter((block) => {
        if (block.kind !== 'concession' || block.unread.has('reason')) return false
        return isSilent(block.facts.get('reason')?.value)
      })
      .map((block) =>
        atHead(block, {
          message: 'The concession gives no reason, so it accepts nothing.',
          todo: 'Add it, such as `reason: "afloat reading follows launch"`.',
          data: { add: 'reason', example: '"afloat reading follows launch"' },
        }),
      ),
  fixes: (_finding, { block }) =>
    block && !block.node.items.some((item) => item.type === 'fact' && item.name.text === 'reason')
      ? [
          {
            title: 'Add a reason',
            edits: [addFact(block, 'reason', `"${blank}"`)],
            preferred: true,
            leaves: ['job/fact-missing'],
          },
        ]
      : [],
})
