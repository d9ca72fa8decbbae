import type { View } from '../../common/view.ts'
import { lastReading } from '../plans/moves.ts'
import { readingMarkdown } from './reading.ts'

export const bed: View = {
  on: 'bed',
  hover: ({ block, from }, ground) => {
    const reading = block.parent && lastReading(block.parent)
    return reading && readingMarkdown(reading, from(reading), ground)
  },
}
