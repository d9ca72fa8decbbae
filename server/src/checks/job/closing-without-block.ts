import { problemCheck, theLanguage } from '../check.ts'
import { takeOut } from '../fix-text.ts'

export default problemCheck({
  id: 'job/closing-without-block',
  problem: 'closing-without-block',
  severity: 'error',
  title: 'Closing brace without a block',
  why: 'A brace was left behind, or one is missing above.',
  source: theLanguage,
  fires: `seal { free-length: 148 mm }
}
#<- closes nothing`,
  quiet: `seal { free-length: 148 mm }`,
  words: () => ({
    message: 'This } closes nothing.',
    todo: 'Delete it, or look for a block above that ends too early.',
  }),
  fixes: ({ at }) => [
    { title: 'Delete the brace', edits: [takeOut(at.section, at.span)], preferred: true, uncovers: true },
  ],
})
