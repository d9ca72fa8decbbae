import type { Block } from '../../../job/model.ts'

/** The drive that a block is in, or is itself. */
export function driveOf(block: Block): Block | undefined {
  let drive: Block | undefined = block
  while (drive && drive.kind !== 'drive') drive = drive.parent
  return drive
}
