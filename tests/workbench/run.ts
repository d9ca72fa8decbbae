// npm run test:workbench: the suite in a real workbench. --screenshots FOLDER keeps the pictures it took there.
// Elsewhere than on Linux, VSCODE_EXECUTABLE names a desktop VS Code to use instead.
import { cpSync, mkdirSync, readdirSync, rmSync } from 'node:fs'
import { delimiter, dirname, join, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { runTests } from '@vscode/test-electron'

const root = resolve(import.meta.dirname, '../..')
const out = resolve(process.env['WORKBENCH_OUT'] ?? join(root, '.workbench-out'))
const { values } = parseArgs({ options: { screenshots: { type: 'string' } } })

rmSync(out, { recursive: true, force: true })
try {
  await runTests({
    vscodeExecutablePath: process.env['VSCODE_EXECUTABLE'] ?? join(root, 'tests/workbench/launch.ts'),
    extensionDevelopmentPath: root,
    extensionTestsPath: join(root, 'dist/workbench/index.cjs'),
    launchArgs: [join(root, 'docs/examples')],
    extensionTestsEnv: {
      WORKBENCH_OUT: out,
      PATH: [dirname(process.execPath), process.env['PATH']].join(delimiter),
    },
  })
} catch (error) {
  console.error(String(error))
  process.exit(error instanceof Error && 'code' in error && typeof error.code === 'number' ? error.code : 1)
}

if (values.screenshots) {
  const folder = resolve(values.screenshots)
  mkdirSync(folder, { recursive: true })
  const pictures = readdirSync(out).filter((name) => name.endsWith('.png'))
  for (const name of pictures) cpSync(join(out, name), join(folder, name))
  console.log(`${pictures.length} pictures in ${folder}`)
}
