import { problemCheck, theLanguage } from '../check.ts'

const motor = (length: number): string => {
  const marks = Array.from({ length }, (_, i) => `U${i}`)
  return `motor { terminals: ${marks.join(', ')} }`
}

export default problemCheck({
  id: 'job/list-too-long',
  problem: 'list-too-long',
  severity: 'error',
  title: 'Longer list than is read',
  why: 'No boat has such a list. Most often it was pasted by mistake. None of it is read, so nothing that depends on it is checked or worked out.',
  source: theLanguage,
  fires: `${motor(101)}
#${' '.repeat(motor(101).indexOf('U100') - 1)}^^^^ 101 names`,
  quiet: motor(100),
  words: ({ count, most, what }) => ({
    message: `The list has ${count} ${what}; at most ${most} can be read.`,
    detail: 'None of them is read.',
    todo: 'Delete those that do not belong here.',
    found: String(count),
    limit: `at most ${most}`,
  }),
})
