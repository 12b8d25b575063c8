import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContextOptions } from 'playwright-core';

/** Its buttons would keep the window wider than a telephone. */
const NARROW =
  'toolbar, toolbar *, notebook *, button, image { padding: 0; margin: 0; border: 0; min-width: 0; min-height: 0 }';

/** Where one browser has its settings, and puts what is downloaded. */
export interface Home {
  readonly downloads: string;
  /** What a browser that is at home there is started with: how it is set is read from files and variables. */
  readonly env: Readonly<Record<string, string>>;
  remove(): void;
}

/** What a page prefers is how the desktop is set: GTK reads it when a program starts. */
export function makeHome({ colorScheme, reducedMotion, locale }: BrowserContextOptions): Home {
  const folder = mkdtempSync(join(tmpdir(), 'croftsheet-webkit-'));
  const downloads = join(folder, 'downloads');
  const gtk = join(folder, 'gtk-3.0');
  mkdirSync(downloads);
  mkdirSync(gtk);
  writeFileSync(join(folder, 'user-dirs.dirs'), `XDG_DOWNLOAD_DIR="${downloads}"\n`);
  writeFileSync(join(gtk, 'gtk.css'), NARROW);
  const animated = reducedMotion === 'reduce' ? 0 : 1;
  writeFileSync(join(gtk, 'settings.ini'), `[Settings]\ngtk-enable-animations=${animated}\n`);
  const language = (locale ?? 'en-US').replace('-', '_');
  return {
    downloads,
    env: {
      XDG_CONFIG_HOME: folder,
      GTK_THEME: colorScheme === 'dark' ? 'Adwaita:dark' : 'Adwaita',
      LANG: `${language}.UTF-8`,
      LANGUAGE: language,
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
