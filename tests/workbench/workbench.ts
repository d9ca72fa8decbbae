// A real VS Code workbench in a headless browser, with the extension under test.
import { relative, resolve } from 'node:path'
import { chromium, type Page } from 'playwright-core'
import { developInBrowser, serveFiles } from './browser-host.ts'
import { findChromium } from './chromium.ts'
import { startVsCode } from './vscode-server.ts'

const browserFlags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-dev-shm-usage',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** What ends a run without a verdict of the suite. */
export const problem = { pageCrashed: 70, serverEnded: 71, notStarted: 72, tooLate: 124 } as const

export type Workbench = {
  readonly page: Page
  /** What the page asked other machines for. Nothing of it left this one. */
  readonly asked: readonly string[]
  /** The suite's verdict (0 or 1), or the problem that came before it. */
  readonly exit: Promise<number>
  readonly close: () => Promise<void>
}

export type WorkbenchOptions = {
  /** The folder of the extension. */
  readonly extension: string
  /** The built file whose `run` is the suite; none where the tests type and click from outside. */
  readonly tests?: string
  readonly folder: string
  /** Where the extension runs: beside the files, or in the page. */
  readonly host: 'computer' | 'browser'
  /** Whether the folder is trusted; if not, it is open in Restricted Mode. */
  readonly trusts?: boolean
  readonly settings: Readonly<Record<string, unknown>>
  readonly onLog: (source: string, text: string) => void
}

export const openWorkbench = async (options: WorkbenchOptions): Promise<Workbench> => {
  const { extension, tests, folder, host, trusts = true, settings, onLog } = options
  const executablePath = findChromium()
  const server = await startVsCode({
    flags: [
      // Without this one the page's wish for a development extension and its tests is not heard.
      '--enable-smoke-test-driver',
      // Without these the extension host would wait hours for a page that is closed.
      ...['--enable-remote-auto-shutdown', '--reconnection-grace-time', '5'],
    ],
    trusts,
    settings,
    onOutput: (text) => onLog('server', text),
  })
  const browser = await chromium.launch({ executablePath, args: browserFlags }).catch(async (error) => {
    await server.stop()
    throw error
  })
  const files = host === 'browser' ? await serveFiles(extension) : undefined
  const close = async (): Promise<void> => {
    await browser.close()
    files?.close()
    await server.stop()
  }
  try {
    const page = await browser.newPage({
      viewport: { width: 1280, height: 800 },
      // The page may load its extensions from its own port only.
      bypassCSP: host === 'browser',
    })
    const asked: string[] = []
    await page.route(
      ({ hostname }) => hostname !== '127.0.0.1',
      (route) => {
        asked.push(route.request().url())
        return route.abort()
      },
    )
    const { promise: exit, resolve: done } = Promise.withResolvers<number>()
    // VS Code calls these two when it runs extension tests.
    await page.exposeFunction('codeAutomationExit', done)
    await page.exposeFunction('codeAutomationLog', (type: string, words: unknown[]) =>
      onLog(type, words.map(String).join(' ')),
    )
    page.on('crash', () => done(problem.pageCrashed))
    void server.ended.then(() => done(problem.serverEnded))
    const authority = `127.0.0.1:${server.port}`
    const remote = (path: string): string => `vscode-remote://${authority}${resolve(path)}`
    const payload = [
      ['skipWelcome', 'true'],
      ['skipReleaseNotes', 'true'],
    ]
    if (files) await developInBrowser(page, files, { tests: tests && relative(extension, tests) })
    else {
      payload.push(['extensionDevelopmentPath', remote(extension)])
      if (tests !== undefined) payload.push(['extensionTestsPath', remote(tests)])
    }
    const query = new URLSearchParams({ folder: resolve(folder), payload: JSON.stringify(payload) })
    await page.goto(`http://${authority}/?${query}`)
    await page.waitForSelector('.monaco-workbench', { timeout: 60_000 })
    return { page, asked, exit, close }
  } catch (error) {
    await close()
    throw error
  }
}
