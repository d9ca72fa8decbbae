import { finished } from 'node:stream'
import {
  AbstractMessageReader,
  type DataCallback,
  Disposable,
  type Message,
  RAL,
} from 'vscode-languageserver/node'

const longestHeader = 4096
const longestBody = 2 ** 26 // bytes, far above any job file

/** Messages in frames (LSP 3.17, Base Protocol). The library's reader goes silent for ever where a header is broken or promises too much; this
 * one says so. A message that cannot be read costs itself alone (`onError`), and the end of the input stands for `exit`. */
export class FramedReader extends AbstractMessageReader {
  readonly #input: NodeJS.ReadableStream
  readonly #onBroken: (words: string) => void

  constructor(input: NodeJS.ReadableStream, onBroken: (words: string) => void) {
    super()
    this.#input = input
    this.#onBroken = onBroken
  }

  listen(callback: DataCallback): Disposable {
    const bodiesIn = unframing()
    const onData = (chunk: Uint8Array) => {
      try {
        for (const body of bodiesIn(chunk)) this.#pass(body, callback)
      } catch (error) {
        this.#input.off('data', onData)
        this.#onBroken((error as Error).message.replaceAll(/\s+/g, ' ').slice(0, 200))
      }
    }
    this.#input.on('data', onData)
    finished(this.#input, { writable: false }, (error) => {
      if (error) this.#onBroken(error.message)
      else callback({ jsonrpc: '2.0', method: 'exit' } as Message)
    })
    return Disposable.create(() => this.#input.off('data', onData))
  }

  #pass(body: Uint8Array, callback: DataCallback): void {
    try {
      callback(JSON.parse(new TextDecoder().decode(body)))
    } catch (error) {
      this.fireError(error)
    }
  }
}

/** Takes bytes as they come, and gives the bodies that are whole. Throws where what comes is no frame. */
function unframing(): (chunk: Uint8Array) => Generator<Uint8Array> {
  const buffer = RAL().messageBuffer.create('utf-8')
  let buffered = 0
  let length: number | undefined
  return function* (chunk) {
    buffer.append(chunk)
    buffered += chunk.length
    for (;;) {
      if (length === undefined) {
        const headers = buffer.tryReadHeaders(true)
        if (!headers && buffered > longestHeader) throw new Error('a header has no end')
        if (!headers) return
        length = lengthIn(headers)
      }
      const body = buffer.tryReadBody(length)
      if (!body) return
      length = undefined
      buffered = 0
      yield body
    }
  }
}

function lengthIn(headers: ReadonlyMap<string, string>): number {
  const text = headers.get('content-length')
  if (text === undefined) throw new Error('a header without Content-Length')
  if (!/^\d+$/.test(text)) throw new Error(`Content-Length is not a number of bytes: ${text}`)
  const length = Number(text)
  if (length > longestBody) throw new Error(`Content-Length ${text} is more than ${longestBody} bytes`)
  return length
}
