import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/nested-too-deep',
  problem: 'too-deep',
  severity: 'error',
  title: 'Brackets nested too deep',
  why: 'No calculation needs more than a few levels of brackets. More is most likely a mistake.',
  source: theLanguage,
  fires: `seal {{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{
#                                                                    ^ too deep`,
  quiet: `seal { free-length: 148 mm }`,
  words: () => ({
    message: 'Brackets are nested too deep to be read from here.',
    todo: 'Close the blocks above first.',
  }),
})
