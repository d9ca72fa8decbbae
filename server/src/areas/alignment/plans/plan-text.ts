import type { UnitSystem } from '../../../quantity/kinds.ts'
import type { Correction } from './correction.ts'
import type { LogEntry } from './log.ts'
import { logText } from './log-words.ts'
import { procedureLines } from './procedure.ts'
import { correctionText } from './words.ts'

/** The plan of a reading for a terminal: verdict and moves, the work foot by foot, and the readings that led there. */
export const planText = (c: Correction, log: readonly LogEntry[], system: UnitSystem): string =>
  [
    correctionText(c, system, procedureLines(c, system)),
    ...(log.length > 1 ? [logText(c.drive, log, system)] : []),
  ].join('\n\n')
