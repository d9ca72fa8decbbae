import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/nested-too-deep',
  problem: 'too-deep',
  severity: 'error',
  title: 'Brackets nested too deep',
  why: 'No job needs more than a few levels; more is noise.',
  source: theLanguage,
  fires: `seal {{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{
#                                                                    ^ too deep`,
  quiet: `seal { free-length: 148 mm }`,
  words: () => ({
    message: 'Brackets are nested too deep to be read from here on.',
    todo: 'Close the blocks above first.',
  }),
})
