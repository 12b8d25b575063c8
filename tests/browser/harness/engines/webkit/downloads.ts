import { createReadStream, existsSync, mkdtempSync, readdirSync, renameSync } from 'node:fs';
import { copyFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as rest } from 'node:timers/promises';
import type { Download } from 'playwright-core';
import { withWhatIsLacking } from './lacking-here.js';

/** How a file is called until all of it has come. */
const COMING = '.wkdownload';

/** Hears of downloads by the folder into which the browser puts them. */
export class Downloads {
  constructor(private readonly folder: string) {}

  async next(timeout: number): Promise<Download> {
    const until = Date.now() + timeout;
    for (;;) {
      const name = readdirSync(this.folder).find((each) => !each.endsWith(COMING) && !each.startsWith(KEPT));
      if (name !== undefined && !existsSync(join(this.folder, name + COMING))) return this.taken(name);
      if (Date.now() > until) throw new Error('Nothing was downloaded.');
      await rest(50);
    }
  }

  /** Put aside, so that another of the same name can come. */
  private taken(name: string): Download {
    const path = join(mkdtempSync(join(this.folder, KEPT)), name);
    renameSync(join(this.folder, name), path);
    return withWhatIsLacking<Download>('download', {
      path: async () => path,
      createReadStream: async () => createReadStream(path),
      suggestedFilename: () => name,
      failure: async () => null,
      saveAs: (to: string) => copyFile(path, to),
    });
  }
}

const KEPT = '.taken-';
