import { at, type Reported } from '../../checks/check.ts'
import type { Value } from '../../job/model.ts'
import { elide } from '../../quantity/elide.ts'
import type { FactValue } from '../../vocabulary/index.ts'
import { twiceListed } from './plans/phase-faults.ts'

/** Marks that a machine lists more than once. */
export const markedTwice = (
  machine: 'controller' | 'motor',
  terminals: Value<FactValue<'motor.terminals'>>,
): readonly Reported[] =>
  twiceListed(terminals).map((twice) => ({
    ...at(terminals, {
      message: `The ${machine} has two terminals marked ${elide(twice.name)}.`,
      todo: `Read the marks on the ${machine} again and write each one once.`,
      found: twice.name,
    }),
    at: twice.at,
  }))
