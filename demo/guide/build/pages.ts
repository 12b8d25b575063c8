import type { ElementsManifest } from '../../../components/package/manifest.mjs';
import { bloggerPage } from './blogger-page.js';
import { changesPage } from './changes-page.js';
import { columnsPage } from './columns-page.js';
import { developerPage } from './developer-page.js';
import { elementsPage } from './elements-page.js';
import { familyPage } from './family-page.js';
import { framed } from './frame.js';
import { functionsPage } from './functions-page.js';
import { galleryPage } from './gallery-page.js';
import type { Markup } from './markup.js';
import { problemsPage } from './problems-page.js';
import { startPage } from './start-page.js';
import { unitsPage } from './units-page.js';

const PAGES: Readonly<Record<string, (manifest: ElementsManifest) => Markup>> = {
  'index.html': startPage,
  'family.html': familyPage,
  'blogger.html': bloggerPage,
  'developer.html': developerPage,
  'gallery.html': galleryPage,
  'elements.html': elementsPage,
  'functions.html': functionsPage,
  'columns.html': columnsPage,
  'units.html': unitsPage,
  'problems.html': problemsPage,
  'changes.html': changesPage,
};

/** Head and body of a page of the guide, as HTML. */
export function pageOf(
  file: string,
  manifest: ElementsManifest,
): { readonly head: string; readonly body: string } {
  const page = PAGES[file];
  if (!page) throw new Error(`The guide has no page ${file}.`);
  return framed(file, page(manifest));
}
