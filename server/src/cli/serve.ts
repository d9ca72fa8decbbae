/** `serve`: the language server, loaded only when it is asked for. */
export async function serveCommand(): Promise<void> {
  const { serve } = await import('../editor/serve-node.ts')
  serve()
}
