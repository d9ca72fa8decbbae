import type { Block } from '../../job/model.ts'
import { CannotRun } from './command.ts'

const names = (blocks: readonly Block[]): string =>
  [...new Set(blocks.map(({ name }) => name ?? ''))].join(', ')

/** The blocks of that name; all of them where none is named. */
export function blocksNamed(
  blocks: readonly Block[],
  kind: string,
  name: string | undefined,
): readonly Block[] {
  if (blocks.length === 0) throw new CannotRun(`The job has no ${kind}.`)
  const found = name === undefined ? blocks : blocks.filter((block) => block.name === name)
  if (found.length === 0)
    throw new CannotRun(`There is no ${kind} called ${name}. The job has ${names(blocks)}.`)
  return found
}

/** The drive of that name; all of them where none is named. */
export function drivesNamed(blocks: readonly Block[], name: string | undefined): readonly Block[] {
  const drives = blocksNamed(
    blocks.filter(({ kind }) => kind === 'drive'),
    'drive',
    name,
  )
  if (name !== undefined && drives.length > 1)
    throw new CannotRun(
      `There are ${drives.length} drives called ${name}: it is not clear which one you mean. Give each its own name.`,
    )
  return drives
}
