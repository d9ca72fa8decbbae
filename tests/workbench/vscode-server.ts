// VS Code itself, served to a browser: the server inside the npm package code-server, started without its wrapper.
import { spawn } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'

const require = createRequire(import.meta.url)
const packageRoot = (name: string): string => dirname(require.resolve(`${name}/package.json`))

const ownSettings = {
  'files.autoSave': 'off',
  'workbench.startupEditor': 'none',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'workbench.enableExperiments': false,
  'chat.disableAIFeatures': true,
  'editor.minimap.enabled': false,
  'update.mode': 'none',
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'git.enabled': false,
}

/** Where VS Code lies, completed with the modules it looks for below its own node_modules. */
const vscodeRoot = (): string => {
  const root = join(packageRoot('code-server'), 'lib/vscode')
  const modules = join(root, 'node_modules')
  mkdirSync(modules, { recursive: true })
  for (const name of ['vscode-textmate', 'vscode-oniguruma']) {
    if (!existsSync(join(modules, name))) symlinkSync(packageRoot(name), join(modules, name), 'junction')
  }
  const logs = join(modules, '@vscode/spdlog')
  mkdirSync(logs, { recursive: true })
  writeFileSync(join(logs, 'package.json'), '{ "type": "module", "main": "index.js" }')
  writeFileSync(join(logs, 'index.js'), `export * from '${import.meta.resolve('./log-writer.ts')}'`)
  return root
}

export type VsCodeServer = {
  readonly port: number
  /** Settles with an exit code when the server ends by itself. */
  readonly ended: Promise<number>
  readonly stop: () => Promise<void>
}

export type ServerOptions = {
  readonly port?: number
  readonly extensions?: string
  readonly flags?: readonly string[]
  /** Whether a folder is trusted without asking. */
  readonly trusts?: boolean
  readonly settings?: Readonly<Record<string, unknown>>
  readonly onOutput?: (text: string) => void
}

const common = ['--accept-server-license-terms', '--telemetry-level', 'off']
/** No gallery: nothing is looked up or installed from outside. */
const noGallery = { EXTENSIONS_GALLERY: '{"serviceUrl":""}' }

export const startVsCode = async (options: ServerOptions): Promise<VsCodeServer> => {
  const { port = 0, flags = [], trusts = true, settings = {}, onOutput } = options
  const home = mkdtempSync(join(tmpdir(), 'workbench-'))
  const folders = { user: join(home, 'user'), data: join(home, 'data') }
  mkdirSync(join(folders.user, 'User'), { recursive: true })
  writeFileSync(join(folders.user, 'User/settings.json'), JSON.stringify({ ...ownSettings, ...settings }))
  const server = spawn(
    process.execPath,
    [
      join(vscodeRoot(), 'out/server-main.js'),
      ...['--host', '127.0.0.1', '--port', String(port), '--without-connection-token'],
      ...(trusts ? ['--disable-workspace-trust'] : []),
      ...['--user-data-dir', folders.user, '--server-data-dir', folders.data],
      ...['--extensions-dir', options.extensions ?? join(home, 'extensions')],
      ...common,
      ...flags,
    ],
    // A process group of its own: extension hosts outlive a server that is ended alone.
    { env: { ...noGallery, ...process.env }, stdio: ['ignore', 'pipe', 'pipe'], detached: true },
  )
  const send = (signal: NodeJS.Signals | 0): boolean => {
    try {
      return process.kill(-(server.pid ?? Number.NaN), signal)
    } catch {
      return false
    }
  }
  const stop = async (): Promise<void> => {
    send('SIGTERM')
    for (let tries = 0; tries < 50 && send(0); tries++) await sleep(100)
    send('SIGKILL')
    rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 })
  }
  const ended = new Promise<number>((done) => server.on('exit', (code) => done(code ?? 1)))
  try {
    const listening = new Promise<number>((found, failed) => {
      let seen = ''
      const read = (chunk: Buffer): void => {
        onOutput?.(String(chunk))
        seen = (seen + chunk).slice(-9999)
        const at = /listening on (\d+)/.exec(seen)?.[1]
        if (at) found(Number(at))
      }
      server.stdout.on('data', read)
      server.stderr.on('data', read)
      server.on('error', failed)
      void ended.then((code) => failed(new Error(`The VS Code server ended (${code}): ${seen}`)))
    })
    return { port: await listening, ended, stop }
  } catch (error) {
    await stop()
    throw error
  }
}

/** Installs a packaged extension into a folder of extensions. */
export const installExtension = async (vsix: string, extensions: string): Promise<void> => {
  const data = mkdtempSync(join(tmpdir(), 'workbench-install-'))
  const main = join(vscodeRoot(), 'out/server-main.js')
  const args = [
    main,
    '--install-extension',
    vsix,
    '--extensions-dir',
    extensions,
    '--server-data-dir',
    data,
    ...common,
  ]
  const installing = spawn(process.execPath, args, {
    env: { ...process.env, ...noGallery },
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  let said = ''
  installing.stderr.on('data', (chunk) => {
    said += chunk
  })
  const code = await new Promise((done, failed) => installing.on('error', failed).on('exit', done))
  rmSync(data, { recursive: true, force: true })
  if (code !== 0) throw new Error(`Installing ${vsix} ended with ${code}: ${said}`)
}
