import { asOfLead } from './bank.ts'
import { byTheRule } from './hull-input.ts'

/** Whether a result rests on so rough an assumption that it proves nothing, though it warns. */
export const isRoughly = (assumptions: readonly string[]): boolean =>
  assumptions.some((words) => words === byTheRule || words.endsWith(asOfLead))
