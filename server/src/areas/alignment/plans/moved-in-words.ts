import type { Block } from '../../../job/model.ts'

export interface MovedInWords {
  readonly foot: string
  readonly words: string
}

/** What a move does to each foot, in the words of the job file. */
export const movedIn = ({ others }: Block): readonly MovedInWords[] =>
  [...others].map(([foot, { at, node }]) => ({
    foot,
    words: at.section.text.slice(node.valueSpan.start, node.valueSpan.end).replace(/\s+/g, ' '),
  }))
