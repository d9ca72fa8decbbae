import { elide } from '../../quantity/elide.ts'
import { type Finding, type Problem, problemCheck, theLanguage } from '../check.ts'

type Round = Extract<Problem, { type: 'refers-to-itself' }>['round']

function wordsFor(path: string, round: Round): Pick<Finding, 'message' | 'detail' | 'todo'> {
  if (round === 'value')
    return {
      message: `${path} is calculated from itself, so it has no value.`,
      todo: 'Write an amount in its place.',
    }
  if (round === 'blocks')
    return {
      message: `${path} is in a block that takes a value from this one, so it cannot be used here.`,
      detail: 'Between two blocks, values go one way only.',
      todo: 'Write the value itself here.',
    }
  const { likeOf: kind, isSelf } = round
  return isSelf
    ? {
        message: `This ${kind} is like itself, so it takes nothing.`,
        todo: `Name another ${kind}, or delete the line.`,
      }
    : {
        message: `This ${kind} is like ${path}, and ${path} leads back to this ${kind}.`,
        detail: 'They lead round in a circle, so no facts are taken.',
        todo: `Write the facts in one ${kind}, and delete its \`like\`.`,
      }
}

export default problemCheck({
  id: 'job/refers-to-itself',
  problem: 'refers-to-itself',
  severity: 'error',
  title: 'Value that depends on itself',
  why: 'A value that depends on itself can never be calculated.',
  source: theLanguage,
  fires: `seal {
  free-length: free-length + 2 mm
#              ^^^^^^^^^^^^^^^^^^ calculated from itself
}`,
  quiet: `seal { free-length: 148 mm + 2 mm }`,
  words: ({ path, round }) => ({ ...wordsFor(elide(path), round), found: elide(path) }),
})
