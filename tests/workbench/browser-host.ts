// VS Code for the Web takes an extension under development from a web server.
import { readFile } from 'node:fs'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { join, normalize, resolve } from 'node:path'
import type { Page } from 'playwright-core'

const typeOf = (file: string): string => (/\.c?js$/.test(file) ? 'text/javascript' : 'application/json')

/** Serves the files of a folder to pages of this machine. */
export const serveFiles = (folder: string): Promise<Server> => {
  const root = resolve(folder)
  const server = createServer(({ url = '/' }, response) => {
    const file = join(root, normalize(decodeURIComponent(new URL(url, 'http://host').pathname)))
    readFile(file, (error, content) => {
      const headers = {
        'Access-Control-Allow-Origin': '*',
        'Cross-Origin-Resource-Policy': 'cross-origin',
        'Content-Type': typeOf(file),
      }
      response.writeHead(error ? 404 : 200, headers).end(content)
    })
  })
  return new Promise((done) => server.listen(0, '127.0.0.1', () => done(server)))
}

/** Puts the extension and its tests into the configuration of the page before its scripts read it. */
export const developInBrowser = async (
  page: Page,
  files: Server,
  { tests }: { readonly tests: string | undefined },
): Promise<void> => {
  const authority = `127.0.0.1:${(files.address() as AddressInfo).port}`
  const at = (path: string) => ({ scheme: 'http', authority, path })
  const development = {
    extensions: [at('/')],
    ...(tests !== undefined && { extensionTestsPath: at(`/${tests}`) }),
  }
  await page.addInitScript(`{
    const look = (_, observer) => {
      const meta = document.getElementById('vscode-workbench-web-configuration')
      if (!meta) return
      observer.disconnect()
      const settings = JSON.parse(meta.getAttribute('data-settings'))
      settings.developmentOptions = { ...settings.developmentOptions, ...${JSON.stringify(development)} }
      meta.setAttribute('data-settings', JSON.stringify(settings))
    }
    new MutationObserver(look).observe(document, { childList: true, subtree: true })
  }`)
}
