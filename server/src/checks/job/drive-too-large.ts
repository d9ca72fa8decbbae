import { problemCheck, theLanguage } from '../check.ts'

const drives = (bearings: number, mark = '') =>
  `drive port {\n${'  bearing { at: 1 m }\n'.repeat(bearings)}}\ndrive starboard { like: port }\n${mark}`

export default problemCheck({
  id: 'job/drive-too-large',
  problem: 'drive-too-large',
  severity: 'error',
  title: 'Drive with too many blocks to be inherited',
  why: 'No drive has so many parts. What each of many drives inherits from such a one would take too long to check.',
  source: theLanguage,
  fires: drives(201, '#                       ^^^^ 201 blocks\n'),
  quiet: drives(2),
  words: ({ path, count, most }) => ({
    message: `${path} has ${count} blocks; at most ${most} can be inherited.`,
    detail: 'None of them is.',
    todo: `Delete the blocks of ${path} that do not belong there.`,
    found: `${count}`,
    limit: `at most ${most}`,
  }),
})
