// The command line as a user runs it, in a folder of its own.
import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll } from 'vitest'
import * as z from 'zod'

export const root = path.resolve(import.meta.dirname, '../..')
export const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'shaftwright-'))
afterAll(() => fs.rmSync(folder, { recursive: true, force: true }))

// Whoever runs the tests may have wishes of their own about colours.
const { NO_COLOR: _none, FORCE_COLOR: _all, ...plainEnv } = process.env

interface Surroundings {
  readonly env?: Readonly<Record<string, string>>
  /** Given to its standard input. */
  readonly input?: string | Uint8Array
}

export function shaftwright(
  args: readonly string[],
  cwd = root,
  { env = {}, input = '' }: Surroundings = {},
) {
  const run = spawnSync(process.execPath, [path.join(root, 'server/src/cli/main.ts'), ...args], {
    cwd,
    env: { ...plainEnv, ...env },
    input,
    encoding: 'utf8',
    maxBuffer: 1e9,
  })
  return { code: run.status, out: run.stdout, err: run.stderr }
}

export const put = (name: string, text: string): string => {
  fs.mkdirSync(path.dirname(path.join(folder, name)), { recursive: true })
  fs.writeFileSync(path.join(folder, name), text)
  return name
}

/** What a command printed, held against the schema in docs, which allows nothing that it does not name. */
export function held(schema: string, out: string): unknown {
  const json: unknown = JSON.parse(out)
  const text = fs.readFileSync(path.join(root, 'docs/schemas', schema), 'utf8')
  z.fromJSONSchema(JSON.parse(text)).parse(json)
  return json
}

export const found = 'docs/examples/survey-launch-as-found.wright'
export const built = 'docs/examples/survey-launch-as-built.wright'
export const ferry = 'docs/examples/twin-screw-ferry.wright'
export const { version: packageVersion } = JSON.parse(
  fs.readFileSync(path.join(root, 'package.json'), 'utf8'),
) as {
  version: string
}
