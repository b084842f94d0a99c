import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** A quiet editor: no welcome page, no news, no questions, and nothing on the screen that moves by itself. */
const quiet = {
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.enableExperiments': false,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'chat.commandCenter.enabled': false,
  'telemetry.telemetryLevel': 'off',
  'security.workspace.trust.enabled': false,
  'extensions.ignoreRecommendations': true,
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'update.mode': 'none',
  'git.enabled': false,
  'editor.minimap.enabled': false,
  'editor.cursorBlinking': 'solid',
  'editor.accessibilitySupport': 'off',
  'files.autoSave': 'off',
};

/** Writes the user's settings where the editor server looks for them. */
export function writeSettings(dataFolder, settings = {}) {
  const folder = join(dataFolder, 'data', 'User');
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'settings.json'), JSON.stringify({ ...quiet, ...settings }, null, 2));
}
