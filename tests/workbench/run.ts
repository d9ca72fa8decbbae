// npm run test:workbench: the suite in a real workbench. --web: with the extension in the browser, its server in a Web Worker.
// --screenshots FOLDER keeps the pictures it took there.
// Elsewhere than on Linux, VSCODE_EXECUTABLE names a desktop VS Code to use instead.
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { delimiter, dirname, join, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { runTests } from '@vscode/test-electron'

const root = resolve(import.meta.dirname, '../..')
const out = resolve(process.env['WORKBENCH_OUT'] ?? join(root, '.workbench-out'))
const { values } = parseArgs({ options: { screenshots: { type: 'string' }, web: { type: 'boolean' } } })

rmSync(out, { recursive: true, force: true })
// What the suite does to the demo jobs, it does to a copy.
const home = mkdtempSync(join(tmpdir(), 'shaftwright-'))
const jobs = join(home, 'examples')
cpSync(join(root, 'docs/examples'), jobs, { recursive: true })

let code = 0
try {
  await runTests({
    vscodeExecutablePath: process.env['VSCODE_EXECUTABLE'] ?? join(root, 'tests/workbench/launch.ts'),
    extensionDevelopmentPath: root,
    extensionTestsPath: join(root, values.web ? 'dist/workbench-web/suite.cjs' : 'dist/workbench/index.cjs'),
    launchArgs: [jobs],
    extensionTestsEnv: {
      WORKBENCH_OUT: out,
      WORKBENCH_HOST: values.web ? 'browser' : 'computer',
      WORKBENCH_THEMES: values.screenshots ? 'light dark contrast' : 'light',
      PATH: [dirname(process.execPath), process.env['PATH']].join(delimiter),
    },
  })
} catch (error) {
  console.error(String(error))
  code = error instanceof Error && 'code' in error && typeof error.code === 'number' ? error.code : 1
} finally {
  rmSync(home, { recursive: true, force: true })
}

if (values.screenshots && code === 0) {
  const folder = resolve(values.screenshots)
  mkdirSync(folder, { recursive: true })
  // The page of the first steps has words of the host's own below.
  const pictures = readdirSync(out).filter((name) => /^(?!get-started).*-(light|dark)\.png$/.test(name))
  for (const name of pictures) cpSync(join(out, name), join(folder, name))
  console.log(`${pictures.length} pictures in ${folder}`)
}
process.exitCode = code
