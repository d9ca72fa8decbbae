import type { UnitSystem } from '../quantity/kinds.ts'
import type { Correction } from './alignment.ts'
import type { LogEntry } from './alignment-log.ts'
import { logText } from './alignment-log-words.ts'
import { procedureLines } from './alignment-procedure.ts'
import { correctionText } from './alignment-words.ts'

/** The plan of a reading for a terminal: verdict and moves, the work foot by foot, and the readings that led there. */
export const planText = (c: Correction, log: readonly LogEntry[], system: UnitSystem): string =>
  [
    correctionText(c, system, procedureLines(c, system)),
    ...(log.length > 1 ? [logText(c.drive, log, system)] : []),
  ].join('\n\n')
