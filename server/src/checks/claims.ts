import type { Status } from '../vocabulary/status.ts'

/** What a status claims besides that its facts and blocks are there, each held by a check. */
export const claims: readonly { readonly from: Status; readonly claim: string; readonly check: string }[] = [
  {
    from: 'issued',
    claim: 'A cable ends at each motor of a drive, and one that is not its phase cable at each controller.',
    check: 'cable/missing',
  },
  {
    from: 'as-built',
    claim:
      'Each drive has a reading of the coupling afloat that is within its limits. It is the last one afloat, and no move follows it.',
    check: 'alignment/no-reading-within',
  },
  {
    from: 'as-built',
    claim:
      'No error is open, no foot is soft, no move had an unexpected effect and no date is after today, unless a concession accepts it.',
    check: 'job/as-built-with-errors',
  },
]
