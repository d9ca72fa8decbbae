import assert from 'node:assert/strict'
import { describe, it } from 'mocha'
import { commands, extensions, languages } from 'vscode'
import { diagnosticsOnce, openJob } from './support/job.ts'

const extension = () => {
  const found = extensions.getExtension('shaftwright.shaftwright')
  assert.ok(found, 'the extension is there')
  return found
}

describe('the extension', () => {
  it('wakes up when a job file is opened', async () => {
    const { document } = await openJob('survey-launch-as-found.wright')
    await diagnosticsOnce(document.uri, (found) => found.length > 0)
    assert.ok(extension().isActive)
  })

  it('has every command of its palette', async () => {
    const declared: { command: string }[] = extension().packageJSON.contributes.commands
    const known = await commands.getCommands(true)
    assert.ok(declared.length > 0)
    for (const { command } of declared) assert.ok(known.includes(command), command)
  })

  it('finds the same faults again after a restart of the server', async () => {
    const { document } = await openJob('survey-launch-as-found.wright')
    const before = await diagnosticsOnce(document.uri, (found) => found.length > 0)
    const cleared = diagnosticsOnce(document.uri, (found) => found.length === 0)
    await commands.executeCommand('shaftwright.restartServer')
    await cleared
    await diagnosticsOnce(document.uri, (found) => found.length === before.length)
    assert.equal(languages.getDiagnostics(document.uri).length, before.length)
  })
})
