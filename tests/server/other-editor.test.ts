/** Another editor than the one the extension is for: a real Neovim, set up as docs/editors.md says, with the built server. */
import { execFile, execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { expect, onTestFinished, test, vi } from 'vitest';

vi.setConfig({ testTimeout: 120_000 });

const root = fileURLToPath(new URL('../..', import.meta.url));
const command = join(root, 'dist/lentil.mjs');
const onBuildMachine = process.env.CI === 'true' || process.env.CI === '1';

function isInstalled(): boolean {
  try {
    execFileSync('nvim', ['--version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

const missing = [...(isInstalled() ? [] : ['nvim']), ...(existsSync(command) ? [] : ['dist/lentil.mjs'])];
if (missing.length > 0) console.warn(`Another editor is not tested: ${missing.join(' and ')} missing.`);

/** The set-up that the page gives, with the command as it was built here. */
function setUp(): string {
  const page = readFileSync(join(root, 'docs/editors.md'), 'utf8');
  const lua = /```lua\n([^`]*)```/.exec(page)?.[1] ?? '';
  const whole = `cmd = { '${process.execPath}', '${command}', 'serve', '--stdio' }`;
  expect(lua).toContain("cmd = { 'lentil', 'serve', '--stdio' }");
  return lua.replace("cmd = { 'lentil', 'serve', '--stdio' }", whole);
}

/** What a person would do: open, read the marks, mend a line, ask about a word, lay out, rename across files. */
const SESSION = `
local told = {}
local function marks()
  local found = {}
  for _, one in ipairs(vim.diagnostic.get(0)) do
    table.insert(found, one.lnum .. ':' .. one.col .. ' ' .. one.message)
  end
  return found
end
local function says(words)
  return function()
    for _, one in ipairs(marks()) do
      if string.find(one, words, 1, true) then return true end
    end
    return false
  end
end
local function ask(method, params)
  params.textDocument = vim.lsp.util.make_text_document_params()
  for _, answer in pairs(vim.lsp.buf_request_sync(0, method, params, 30000) or {}) do
    return answer.result, answer.error
  end
end
vim.cmd('edit week.lentil')
told.wasMarked = vim.wait(60000, says('no sign'), 20)
told.first = marks()
vim.api.nvim_buf_set_text(0, 2, 4, 2, 4, { '-' })
told.wasMended = vim.wait(20000, function() return not says('no sign')() and says('R power')() end, 20)
told.second = marks()
told.hover = ask('textDocument/hover', { position = { line = 2, character = 3 } })
local edits = ask('textDocument/formatting', { options = { tabSize = 2, insertSpaces = true } })
vim.lsp.util.apply_text_edits(edits, vim.api.nvim_get_current_buf(), 'utf-16')
told.laidOut = vim.api.nvim_buf_get_lines(0, 0, -1, false)
local rename = ask('textDocument/rename', { position = { line = 6, character = 32 }, newName = 'FOC-7' })
vim.lsp.util.apply_workspace_edit(rename, 'utf-16')
vim.cmd('silent wall')
vim.fn.writefile({ vim.fn.json_encode(told) }, 'told.json')
vim.cmd('qall!')
`;

const WEEK = `# 👓 Zoë’s bench
order QL-1
  R 4.50
  L -4.50
  design single-vision
  pd 64
  reading 2026-11-24 by KO with FOC-A
    R -4.75
    L -4.50
    pd 64
`;

test.skipIf(missing.length > 0 && !onBuildMachine)('Neovim works with the server as the page says', async () => {
  expect(missing).toEqual([]);
  const folder = mkdtempSync(join(tmpdir(), 'lentil-neovim-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  writeFileSync(join(folder, 'week.lentil'), WEEK);
  writeFileSync(join(folder, 'bench.lentil'), 'instrument FOC-A\n  reads-to 0.01\n');
  writeFileSync(join(folder, 'session.lua'), `${setUp()}\n${SESSION}`);
  await promisify(execFile)('nvim', ['--headless', '--clean', '-n', '-S', 'session.lua'], {
    cwd: folder,
    timeout: 100_000,
    env: { ...process.env, XDG_STATE_HOME: folder, XDG_DATA_HOME: folder, XDG_CACHE_HOME: folder, HOME: folder },
  });
  const told = JSON.parse(readFileSync(join(folder, 'told.json'), 'utf8'));
  expect(told, JSON.stringify(told.second)).toMatchObject({ wasMarked: true, wasMended: true });
  expect(told.first.filter((one: string) => one.startsWith('2:4'))).toHaveLength(1);
  // The settings of the editor name the set that decides, and the bench file knows the instrument.
  expect(told.second.join('\n')).toContain('z80.1-2015');
  expect(told.second.join('\n')).not.toContain('No instrument');
  expect(told.hover.contents.value).toContain('Right eye');
  expect(told.laidOut).toContain('  R           -4.50');
  const saved = (name: string) => readFileSync(join(folder, name), 'utf8');
  expect(saved('week.lentil')).toContain('with FOC-7\n');
  expect(saved('bench.lentil')).toContain('instrument FOC-7\n');
});
