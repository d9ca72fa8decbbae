// The state of the language server, shown beside the language of the open job file ("{}" in the status bar).
import { type Disposable, LanguageStatusSeverity, languages } from 'vscode'

type ServerState = 'starting' | 'running' | 'stopped' | 'failed'

const shown = {
  starting: { detail: 'The language server is starting', severity: LanguageStatusSeverity.Information },
  running: { detail: 'Job files are checked as you type', severity: LanguageStatusSeverity.Information },
  stopped: {
    detail: 'The language server is stopped. Job files are not checked',
    severity: LanguageStatusSeverity.Warning,
  },
  failed: {
    detail: 'The language server failed. Job files are not checked',
    severity: LanguageStatusSeverity.Error,
  },
}

const showLog = { title: 'Show Log', command: 'shaftwright.showLog' }
const start = { title: 'Start', command: 'shaftwright.startServer' }

export type ServerStatus = Disposable & { readonly show: (state: ServerState) => void }

export const createServerStatus = (): ServerStatus => {
  const item = languages.createLanguageStatusItem('shaftwright.server', { language: 'shaftwright' })
  item.name = 'Shaftwright language server'
  item.text = 'Shaftwright'
  const show = (state: ServerState): void => {
    item.busy = state === 'starting'
    item.detail = shown[state].detail
    item.severity = shown[state].severity
    item.command = state === 'stopped' || state === 'failed' ? start : showLog
  }
  show('stopped')
  return { show, dispose: () => item.dispose() }
}
