import { problemCheck, theLanguage } from '../check.ts'

const bed = (length: number, mark = '') => {
  const feet = Array.from({ length }, (_, i) => `  foot f${i} { like: f${i + 1} }\n`)
  return `bed {\n${feet.join('')}${mark}  foot f${length} { from-coupling: 180 mm  across: 140 mm port }\n}`
}

export default problemCheck({
  id: 'job/chain-too-long',
  problem: 'chain-too-long',
  severity: 'error',
  title: 'Too many values, each taken from the next',
  why: 'Nobody can follow so many, and most often a name is wrong.',
  source: theLanguage,
  fires: bed(33, '#                  ^^^ chain\n'),
  quiet: bed(3),
  words: ({ path }) => ({
    message: `${path} stands at the end of a long chain of values, each taken from the next; it is not followed further.`,
    todo: 'Write the value itself.',
    found: path,
  }),
})
