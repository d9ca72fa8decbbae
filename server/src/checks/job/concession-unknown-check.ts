import { elide } from '../../quantity/elide.ts'
import { nearest } from '../../quantity/nearest.ts'
import { fileCheck, theLanguage } from '../check.ts'
import { useNearest } from '../fix-text.ts'

export default fileCheck({
  id: 'job/concession-unknown-check',
  severity: 'error',
  title: 'Concession for a check that does not exist',
  why: 'A concession with a misspelt check accepts nothing. The finding that it was meant for stays open.',
  source: theLanguage,
  fires: `concession alignment/offset-outsid {
#          ^^^^^^^^^^^^^^^^^^^^^^^ no check called alignment/offset-outsid
  on:         main
  reason:     "read again after launch"
  granted-by: "design office"
  until:      9999-12-31
}`,
  quiet: `concession alignment/offset-outside {
  on:         main
  reason:     "read again after launch"
  granted-by: "design office"
  until:      9999-12-31
}`,
  file: ({ blocks, checkIds }) =>
    blocks.flatMap(({ kind, about }) => {
      if (kind !== 'concession' || !about || checkIds.includes(about.text)) return []
      const near = nearest(about.text, checkIds)
      return [
        {
          at: about.at,
          message: `There is no check called ${elide(about.text)}.`,
          todo: near ? `Did you mean ${near}?` : 'The checks are in their list, by area.',
          found: elide(about.text),
          ...(near && { data: { nearest: near } }),
        },
      ]
    }),
  fixes: ({ at, data }) =>
    useNearest(at, data?.nearest).map((fix) => ({
      ...fix,
      leaves: ['job/concession-unused', 'job/concession-expired'],
    })),
})
