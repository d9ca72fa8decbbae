// What is printed must arrive: a result that is lost is no success.
import { spawnSync } from 'node:child_process'
import path from 'node:path'
import { expect, it } from 'vitest'
import { folder, put, root } from './run-cli.ts'

const main = path.join(root, 'server/src/cli/main.ts')
const job = 'seal s { free-length: 148 mm }\n'

/** Runs a command in a shell, `$0` being the program. */
function shell(words: string) {
  const { status, stdout, stderr } = spawnSync('bash', ['-c', words, main], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, PATH: `${path.dirname(process.execPath)}:${process.env['PATH']}` },
  })
  return { status, stdout, stderr }
}

it.each(['check ok.wright', 'check ok.wright --format json', 'new Launch', '--version', '--help'])(
  'on a full disk the command ends with 2: %s',
  (command) => {
    put('ok.wright', job)
    const { status, stderr } = shell(`node "$0" ${command} > /dev/full`)
    expect({ status, stderr }).toEqual({
      status: 2,
      stderr: 'The output cannot be written: the disk is full.\n',
    })
  },
)

it('words of an error that are lost end with 2 as well', () => {
  put('ok.wright', job)
  expect(shell('node "$0" check ok.wright --max-warnings 0 > /dev/full 2>&1').status).toBe(2)
  expect(shell('node "$0" check none.wright 2> /dev/full').status).toBe(2)
})

it('a reader that has seen enough is no fault', () => {
  put('wrong.wright', '}\n'.repeat(90_000))
  const { stdout, stderr } = shell(`
    node "$0" check wrong.wright --format json | head -n 1; echo "\${PIPESTATUS[0]}"`)
  expect(stderr).toBe('')
  expect(stdout).toBe('{\n1\n')
})
