import type { Message, MessageReader, MessageWriter, RequestMessage } from 'vscode-languageserver/node'

/** An editor that reads nothing any more must not keep the server alive. */
const longestWait = 2000 // ms

/** Holds `exit` back until the answer to the `shutdown` before it is on its way: the library ends the process as soon as `exit` is read, and the
 * answer would be lost where both come together. */
export function exitLast(reader: MessageReader, writer: MessageWriter): void {
  let asked: RequestMessage['id'] | undefined
  let answered = (): void => {}
  let answer: Promise<void> | undefined

  const listen = reader.listen.bind(reader)
  reader.listen = (callback) =>
    listen((message) => {
      const { id, method } = message as Partial<RequestMessage>
      if (method === 'shutdown' && id !== undefined) {
        asked = id
        answer = new Promise((resolve) => {
          answered = resolve
        })
      }
      if (method === 'exit' && answer) void answer.then(() => callback(message))
      else callback(message)
    })

  const write = writer.write.bind(writer)
  writer.write = async (message: Message) => {
    const { id, method } = message as Partial<RequestMessage>
    const isAnswer = method === undefined && id !== undefined && id === asked
    if (isAnswer) setTimeout(answered, longestWait).unref()
    try {
      await write(message)
    } finally {
      // A channel between processes takes a message before it has sent it.
      if (isAnswer) setImmediate(answered)
    }
  }
}
