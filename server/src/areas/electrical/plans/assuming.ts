import { formatNumber } from '../../../quantity/format.ts'

/** Collects what had to be assumed, each once. */
export function assuming() {
  const assumptions: string[] = []
  const assume = (words: string) => {
    if (!assumptions.includes(words)) assumptions.push(words)
  }
  return {
    assumptions,
    assume,
    or: (value: number | undefined, otherwise: number, what: string): number => {
      if (value === undefined) assume(`${what} is ${formatNumber(otherwise, 3)}: it is not stated`)
      return value ?? otherwise
    },
  }
}

export type Assume = (words: string) => void
export type Or = ReturnType<typeof assuming>['or']
