import { at, check, theJobFile } from '../../../../checks/check.ts'

const job = (other: string) => `protection main-fuse { kind: fuse  rating: 300 A }
protection branch-fuse {
  kind: fuse
  rating: 100 A
  selective-with: ${other}
}`

export default check({
  id: 'protection/selective-with-itself',
  severity: 'error',
  title: 'Fuse that is selective with itself',
  why: 'The table of a maker pairs two devices. Where a device names itself, the one before it is compared by no table.',
  source: theJobFile('the name written at `selective-with`'),
  on: 'protection',
  needs: { other: 'protection.selective-with' },
  fires: job('branch-fuse').replace(
    'with: branch-fuse',
    'with: branch-fuse\n#                 ^^^^^^^^^^^ itself',
  ),
  quiet: job('main-fuse'),
  run: ({ other }, lookup) =>
    lookup.referred('selective-with') === lookup.block
      ? [
          at(other, {
            message: 'The device names itself.',
            todo: 'Name the fuse or breaker nearer the battery, or leave the fact out.',
          }),
        ]
      : [],
})
