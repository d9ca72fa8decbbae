import { problemCheck, theLanguage } from '../check.ts'

const bed = (length: number, mark = '') => {
  const feet = Array.from({ length }, (_, i) => `  foot f${i} { like: f${i + 1} }\n`)
  return `bed {\n${feet.join('')}${mark}  foot f${length} { from-coupling: 180 mm  across: 140 mm port }\n}`
}

export default problemCheck({
  id: 'job/chain-too-long',
  problem: 'chain-too-long',
  severity: 'error',
  title: 'Too many values or drives, each taken from the next',
  why: 'Nobody can follow such a long chain. Most often a name in it is wrong.',
  source: theLanguage,
  fires: bed(33, '#                  ^^^ chain\n'),
  quiet: bed(3),
  words: ({ path }) => ({
    message: `${path} is taken from too long a chain.`,
    detail: 'No more than 32 are followed, each taken from the next.',
    todo: 'Write it out here.',
    found: path,
  }),
})
