import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/gauge-unknown',
  problem: 'not-a-gauge',
  severity: 'error',
  title: 'Wire gauge that does not exist',
  why: 'A wire gauge is a name, not an amount: 6, 2, 1/0 to 4/0.',
  source: theLanguage,
  fires: `cable feed {
  conductor: 5/0 AWG
#            ^^^^^^^ not a wire gauge
}`,
  quiet: `cable feed { conductor: 2/0 AWG }`,
  words: (p, written) => ({
    message: `${elide(p.text)} is not a wire gauge.`,
    todo: /sae$/i.test(written)
      ? 'Write 14, 12, 10, 8, 6, 4, 2 or 1, or 1/0 to 4/0 (0 to 0000). Other SAE gauges are not in the table.'
      : 'Write a whole number from 40 to 0, or 1/0 to 4/0 (0 to 0000). Larger conductors are in kcmil or mm2.',
    found: elide(p.text),
  }),
})
