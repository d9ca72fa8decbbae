import { fork, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { createServer, type Socket } from 'node:net'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { text } from 'node:stream/consumers'
import { afterEach, describe, expect, it } from 'vitest'
import { ErrorCodes, type Message, StreamMessageReader } from 'vscode-languageserver/node'
import { frame } from './client.ts'

// What a server must do with its input and in what order: LSP 3.17, Base Protocol and Server lifecycle; JSON-RPC 2.0 section 5.1.

const main = resolve(import.meta.dirname, '../../server/src/editor/main-node.ts')
const started: { kill: () => void }[] = []
afterEach(() => {
  for (const child of started.splice(0)) child.kill()
})

type Said = Message & { id?: unknown; method?: string; result?: unknown; error?: { code: number } }

/** The server in a process of its own, told byte for byte. */
function start() {
  const child = spawn(process.execPath, [main, '--stdio'])
  started.push(child)
  const said: Said[] = []
  let look = () => {}
  new StreamMessageReader(child.stdout).listen((message) => {
    said.push(message as Said)
    look()
  })
  const errors = text(child.stderr)
  const exit = once(child, 'exit')
  const write = (bytes: string | Uint8Array) => void child.stdin.write(bytes)
  return {
    child,
    said,
    write,
    tell: (method: string, params: object = {}) => write(frame({ jsonrpc: '2.0', method, params })),
    ask: (id: number, method: string, params: object = {}): Promise<Said> => {
      write(frame({ jsonrpc: '2.0', id, method, params }))
      return new Promise((done) => {
        look = () => {
          const answer = said.find((message) => message.id === id)
          if (answer) done(answer)
        }
        look()
      })
    },
    ended: async () => ({ code: (await exit)[0] as number | null, words: await errors }),
  }
}

const hello = { processId: null, rootUri: null, capabilities: {} }
const hover = { textDocument: { uri: 'untitled:A' }, position: { line: 0, character: 0 } }
const opened = { textDocument: { uri: 'untitled:A', languageId: 'shaftwright', version: 1, text: 'drive {' } }

describe('an input that cannot be followed', () => {
  it.each([
    ['has no length', 'Content-Type: application/vscode-jsonrpc\r\n\r\n{}', 'without Content-Length'],
    ['has a word for a length', 'Content-Length: many\r\n\r\n{}', 'not a number of bytes: many'],
    ['has a length with more behind it', 'Content-Length: 2x\r\n\r\n{}', 'not a number of bytes: 2x'],
    ['has a length below nothing', 'Content-Length: -2\r\n\r\n{}', 'not a number of bytes: -2'],
    ['promises more than any job file', 'Content-Length: 99999999999\r\n\r\n{}', '99999999999 is more than'],
    ['has a line that is no header', 'hello\r\n\r\n{}', 'hello'],
    ['has a header that never ends', 'hello\n'.repeat(2000), 'a header has no end'],
  ])('ends the server with code 1 and one line of words when it %s', async (_, bytes, words) => {
    const server = start()
    await server.ask(1, 'initialize', hello)
    server.write(bytes)
    const end = await server.ended()
    expect(end.code).toBe(1)
    expect(end.words).toMatch(/^The language server cannot follow its input: [^\n]+\.\n$/)
    expect(end.words).toContain(words)
  })

  it('may come byte by byte, or in one piece', async () => {
    const server = start()
    const bytes = Buffer.from(frame({ jsonrpc: '2.0', id: 1, method: 'initialize', params: hello }))
    for (const byte of bytes) server.write(Uint8Array.of(byte))
    const unknown = (id: number) =>
      frame({ jsonrpc: '2.0', id, method: 'no/such', params: { name: 'jöb ⚓' } })
    server.write(Array.from({ length: 300 }, (_, n) => unknown(n + 2)).join(''))
    const { error } = await server.ask(999, 'no/such')
    expect(error?.code).toBe(ErrorCodes.MethodNotFound)
    expect(server.said.map(({ id }) => id)).toEqual([...Array.from({ length: 301 }, (_, n) => n + 1), 999])
  })

  it('may hold a longer message than one header may be, and a header after it', async () => {
    const server = start()
    await server.ask(1, 'initialize', { ...hello, filling: 'x'.repeat(300_000) })
    server.write(frame({ jsonrpc: '2.0', method: 'no/such', params: { filling: 'x'.repeat(300_000) } }))
    server.write('Content-Len')
    server.write('gth: 2\r\n\r\n{}')
    expect((await server.ask(2, 'no/such')).error?.code).toBe(ErrorCodes.MethodNotFound)
  })
})

describe('a message that cannot be read costs itself only', () => {
  it.each([
    ['no JSON', '{"jsonrpc": ', ErrorCodes.ParseError],
    ['nothing', '', ErrorCodes.ParseError],
    ['a cancellation of nothing', '{"jsonrpc":"2.0","method":"$/cancelRequest"}', ErrorCodes.InvalidRequest],
  ])('%s', async (_, body, code) => {
    const server = start()
    await server.ask(1, 'initialize', hello)
    server.write(frame(body))
    expect((await server.ask(2, 'textDocument/hover', hover)).result).toBeNull()
    expect(server.said.find(({ id }) => id === null)?.error?.code).toBe(code)
  })

  it('JSON that is no message', async () => {
    const server = start()
    await server.ask(1, 'initialize', hello)
    for (const body of ['null', '7', '[]', '{}', '{"id":3}', '{"id":null,"method":"a"}'])
      server.write(frame(body))
    expect((await server.ask(2, 'textDocument/hover', hover)).result).toBeNull()
  })
})

describe('the order of a life', () => {
  const codeOf = async (answer: Promise<Said>) => (await answer).error?.code

  it('before initialize nothing is answered or taken', async () => {
    const server = start()
    server.tell('textDocument/didOpen', opened)
    expect(await codeOf(server.ask(1, 'textDocument/hover', hover))).toBe(ErrorCodes.ServerNotInitialized)
    expect(await codeOf(server.ask(2, 'no/such'))).toBe(ErrorCodes.ServerNotInitialized)
    expect(await codeOf(server.ask(3, 'shutdown'))).toBe(ErrorCodes.ServerNotInitialized)
    expect((await server.ask(4, 'initialize', hello)).result).toBeDefined()
    expect((await server.ask(5, 'textDocument/hover', hover)).result).toBeNull()
    expect(server.said).toHaveLength(5)
  })

  it('initialize is taken once', async () => {
    const server = start()
    await server.ask(1, 'initialize', hello)
    expect(await codeOf(server.ask(2, 'initialize', hello))).toBe(ErrorCodes.InvalidRequest)
  })

  it('initialize that makes no sense is refused, and may be asked again', async () => {
    const server = start()
    const wrong = [
      { ...hello, workspaceFolders: [null] },
      { ...hello, rootUri: 5 },
    ]
    for (const [n, params] of wrong.entries())
      expect(await codeOf(server.ask(1 + n, 'initialize', params))).toBe(ErrorCodes.InvalidParams)
    expect((await server.ask(9, 'initialize', hello)).result).toBeDefined()
  })

  it('a request that sends nothing along is told what it lacks', async () => {
    const server = start()
    await server.ask(1, 'initialize', hello)
    server.write(frame({ jsonrpc: '2.0', id: 2, method: 'textDocument/hover' }))
    expect((await server.ask(3, 'textDocument/hover', hover)).result).toBeNull()
    expect(server.said.find(({ id }) => id === 2)?.error?.code).toBe(ErrorCodes.InvalidParams)
  })

  it('after shutdown only exit is taken, and the code is 0', async () => {
    const server = start()
    await server.ask(1, 'initialize', hello)
    expect((await server.ask(2, 'shutdown')).result).toBeNull()
    const before = server.said.length
    server.tell('textDocument/didOpen', opened)
    for (const [n, method] of ['textDocument/hover', 'no/such', 'shutdown', 'initialize'].entries())
      expect(await codeOf(server.ask(3 + n, method, { ...hello, ...hover }))).toBe(ErrorCodes.InvalidRequest)
    expect(server.said).toHaveLength(before + 4)
    server.tell('exit')
    expect(await server.ended()).toEqual({ code: 0, words: '' })
  })

  it('shutdown and exit in one piece are both taken, and the answer is written before the end', async () => {
    for (let round = 0; round < 5; round++) {
      const server = start()
      const last = [
        { jsonrpc: '2.0', id: 1, method: 'initialize', params: hello },
        { jsonrpc: '2.0', method: 'initialized', params: {} },
        { jsonrpc: '2.0', id: 'last', method: 'shutdown' },
        { jsonrpc: '2.0', method: 'exit' },
      ]
      server.write(last.map(frame).join(''))
      expect(await server.ended()).toEqual({ code: 0, words: '' })
      expect(server.said.filter(({ id }) => id === 'last')).toEqual([
        { jsonrpc: '2.0', id: 'last', result: null },
      ])
    }
  })

  it('exit without shutdown gives code 1', async () => {
    const server = start()
    await server.ask(1, 'initialize', hello)
    server.tell('exit')
    expect(await server.ended()).toEqual({ code: 1, words: '' })
  })

  it('exit before anything else gives code 1', async () => {
    const server = start()
    server.tell('exit')
    expect(await server.ended()).toEqual({ code: 1, words: '' })
  })
})

describe('another way than standard input', () => {
  const shutdown = { jsonrpc: '2.0', id: 2, method: 'shutdown' }
  const exit = { jsonrpc: '2.0', method: 'exit' }

  it('the channel to a child: shutdown and exit at once', async () => {
    const child = fork(main, ['--node-ipc'])
    started.push(child)
    const said: Said[] = []
    child.on('message', (message: Said) => said.push(message))
    for (const message of [{ jsonrpc: '2.0', id: 1, method: 'initialize', params: hello }, shutdown, exit])
      child.send(message)
    expect((await once(child, 'close'))[0]).toBe(0)
    expect(said.map(({ id }) => id)).toEqual([1, 2])
  })

  it('the channel to a child: the parent is gone', async () => {
    const child = fork(main, ['--node-ipc'])
    started.push(child)
    child.send({ jsonrpc: '2.0', id: 1, method: 'initialize', params: hello })
    await once(child, 'message')
    child.disconnect()
    await once(child, 'exit')
  })

  it.each(['pipe', 'socket'])('a %s: shutdown and exit at once', async (way) => {
    const listener = createServer()
    const folder = mkdtempSync(join(tmpdir(), 'shaftwright-'))
    const pipe =
      process.platform === 'win32' ? `\\\\.\\pipe\\shaftwright-${process.pid}` : join(folder, 'pipe')
    listener.listen(way === 'pipe' ? pipe : { port: 0, host: '127.0.0.1' })
    await once(listener, 'listening')
    const address = listener.address()
    const name = typeof address === 'string' ? address : address?.port
    const child = spawn(process.execPath, [main, `--${way}=${name}`])
    started.push(child)
    const [socket] = (await once(listener, 'connection')) as [Socket]
    const said: Said[] = []
    new StreamMessageReader(socket).listen((message) => void said.push(message as Said))
    socket.write(
      [{ jsonrpc: '2.0', id: 1, method: 'initialize', params: hello }, shutdown, exit].map(frame).join(''),
    )
    const [[code]] = await Promise.all([once(child, 'exit'), once(socket, 'close')])
    listener.close()
    rmSync(folder, { recursive: true })
    expect(code).toBe(0)
    expect(said.map(({ id }) => id)).toEqual([1, 2])
  })

  it('none is named', async () => {
    const child = spawn(process.execPath, [main])
    started.push(child)
    const words = text(child.stderr)
    expect((await once(child, 'exit'))[0]).toBe(2)
    expect(await words).toMatch(/^Start the language server with --stdio.*\n$/)
  })
})

describe('an editor that is gone', () => {
  it.each([
    ['without a word', '', 1],
    ['in the middle of a message', 'Content-Length: 100\r\n\r\n{', 1],
    ['after shutdown, in the same breath', frame({ jsonrpc: '2.0', id: 2, method: 'shutdown' }), 0],
  ])('%s ends the server', async (_, last, code) => {
    const server = start()
    await server.ask(1, 'initialize', hello)
    server.child.stdin.end(last)
    expect((await server.ended()).code).toBe(code)
  })

  it('before it said anything ends the server', async () => {
    const server = start()
    server.child.stdin.end()
    expect((await server.ended()).code).toBe(1)
  })
})
