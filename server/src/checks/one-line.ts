import type { Finding } from './check.ts'

/** As long as the Problems list shows without cutting it off. */
export const longestLine = 100

type MessageAndDetail = Pick<Finding, 'message' | 'detail'>

/** The whole sentence where it fits in one line; else a short line, with the whole sentence below it. */
export const oneLine = (whole: string, short: string): MessageAndDetail =>
  whole.length <= longestLine ? { message: whole } : { message: short, detail: whole }

/** The first sentence as the line, and the others below it. */
export function firstLine(sentences: string): MessageAndDetail {
  const end = /\.\s+(?=\p{Lu})/u.exec(sentences)
  if (!end) return { message: sentences }
  return {
    message: sentences.slice(0, end.index + 1),
    detail: sentences.slice(end.index + end[0].length),
  }
}
