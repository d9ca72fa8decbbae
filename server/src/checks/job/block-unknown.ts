import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { useNearest } from '../fix-text.ts'

export default problemCheck({
  id: 'job/block-unknown',
  problem: 'unknown-block',
  severity: 'error',
  title: 'Unknown block',
  why: 'A misspelt block is not checked, nor is anything in it.',
  source: theLanguage,
  fires: `drive main {
  seel { free-length: 148 mm }
# ^^^^ seal
}`,
  quiet: `drive main { seal { free-length: 148 mm } }`,
  words: (p) => ({
    message: `There is no kind of block called ${elide(p.kind)}.`,
    todo: p.nearest ? `Did you mean ${p.nearest}?` : 'The kinds of block are in the reference.',
    found: elide(p.kind),
    ...(p.nearest && { data: { nearest: p.nearest } }),
  }),
  fixes: ({ at, data }) => useNearest(at, data?.nearest),
})
