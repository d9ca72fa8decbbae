import { version } from '../editor/version.ts'

/** What made an output, as JSON names it. */
export const tool = { name: 'shaftwright', version } as const
