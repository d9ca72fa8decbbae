-- Neovim's built-in client over standard input and output. Prints one line of JSON: what it shows of a job file.
-- Written for Neovim 0.7, so that clients are started and buffers attached by hand.
local node, server, job = unpack(vim.split(vim.env.SHAFTWRIGHT_TEST, '\n'))

local function wait(what, seen)
  assert(vim.wait(20000, seen, 20), what .. ' did not come')
end

vim.cmd('edit ' .. vim.fn.fnameescape(job))
vim.bo.filetype = 'shaftwright'
local buffer = vim.api.nvim_get_current_buf()
local client = vim.lsp.start_client({
  name = 'shaftwright',
  cmd = { node, server, '--stdio' },
  root_dir = vim.fn.fnamemodify(job, ':h'),
})
assert(client, 'the server does not start')
vim.lsp.buf_attach_client(buffer, client)
wait('diagnostics', function() return #vim.diagnostic.get(buffer) > 0 end)

local function ask(method, params)
  local answers = assert(vim.lsp.buf_request_sync(buffer, method, params, 20000))
  return answers[client].result
end

local shown = { diagnostics = {} }
for _, one in ipairs(vim.diagnostic.get(buffer)) do
  table.insert(shown.diagnostics, { line = one.lnum, severity = one.severity, message = one.message })
end

vim.fn.search('reading dry-1')
vim.cmd('normal w')
shown.hover = ask('textDocument/hover', vim.lsp.util.make_position_params()).contents.value

vim.fn.search('capacity:')
shown.before = vim.api.nvim_get_current_line()
vim.cmd([[substitute/ \+/ /g]])
shown.spoilt = vim.api.nvim_get_current_line()
local edits = ask('textDocument/formatting', vim.lsp.util.make_formatting_params())
vim.lsp.util.apply_text_edits(edits, buffer, 'utf-16')
shown.after = vim.api.nvim_get_current_line()

local function completion(line)
  vim.api.nvim_set_current_line(line)
  local params = vim.lsp.util.make_position_params()
  params.position.character = #line
  params.context = { triggerKind = 1 }
  local found = ask('textDocument/completion', params)
  return vim.tbl_map(function(item) return item.label end, found and found.items or {})
end
shown.behindNumber = completion('  capacity: 200')
shown.behindUnit = completion('  capacity: 200 Ah')

vim.lsp.stop_client(client)
wait('the end of the server', function() return vim.lsp.client_is_stopped(client) end)
io.stdout:write(vim.json and vim.json.encode(shown) or vim.fn.json_encode(shown))
