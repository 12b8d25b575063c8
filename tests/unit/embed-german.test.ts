import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { phrase, say, sayAs, shownText, spoken, typedText } from '../../components/embed/said.js';
import { standingWords } from '../../components/embed/standing-words.js';
import { toolsFor } from '../../components/embed/tools.js';
import { translationsOf } from '../support/catalogue.js';
import { saidTexts } from '../support/said-texts.js';

/** An element on a page written in a language, as far as that is asked. */
const pageIn = (lang: string) => ({ closest: () => ({ getAttribute: () => lang }) }) as unknown as Element;

const speaking = async (lang: string) => {
  await sayAs(pageIn(lang));
};

afterEach(() => speaking('en'));

const doings = new Proxy({} as never, { get: () => vi.fn() });
const STANDING = {
  tried: true,
  canUndo: true,
  outdated: false,
  own: false,
  canBringBack: true,
  mayOpenGrid: true,
  isGrid: false,
};
const labels = () => toolsFor(STANDING, doings).map(({ label }) => label);

describe('an embedded sheet on a German page', () => {
  it('says what can be done and how things stand in German, and in English again', async () => {
    expect(labels()).toEqual(['Undo', 'Start over', 'Take home', 'Bring mine back', 'Open as a grid']);
    await speaking('de-AT');
    expect(labels()).toEqual([
      'Rückgängig',
      'Neu beginnen',
      'Mitnehmen',
      'Meine zurückholen',
      'Als Raster öffnen',
    ]);
    const asked = { tried: false, own: false, outdated: false, keeps: true, isOpen: true, source: null };
    const said = (isGrid: boolean, tried = false) => standingWords({ ...asked, isGrid, tried });
    expect(said(false)).toBe('Die markierten Zellen sind zum Ausprobieren: die Zahlen folgen.');
    expect(said(true)).toBe('Alles hier ist zum Ausprobieren: die Seite bleibt, wie sie ist.');
    expect(said(true, true)).toBe('Eigene Zahlen, in diesem Browser aufbewahrt.');
    expect(sayAs(pageIn('de-AT'))).toBeNull();
    await speaking('en');
    expect(labels()[0]).toBe('Undo');
  });

  it('writes days and numbers as German does', async () => {
    const written = () => [shownText('2026-05-04'), shownText('soon'), typedText(1.5), typedText('1.5')];
    expect(written()).toEqual(['May 4, 2026', 'soon', '1.5', '1.5']);
    await speaking('de');
    expect(written()).toEqual(['04.05.2026', 'soon', '1,5', '1.5']);
  });

  it('speaks English where a language is not known, or is none', async () => {
    for (const lang of ['fr', '', 'de_DE', '💡', 'constructor']) {
      await speaking('de');
      await speaking(lang);
      expect(labels()[0], lang).toBe('Undo');
    }
  });

  it('leaves what is no text of ours as it is', async () => {
    await speaking('de');
    expect([spoken('toString'), say`${'toString'}: ${'{0}'}`, phrase('x')]).toEqual([
      'toString',
      'toString: {0}',
      'x',
    ]);
  });

  it('has every text of its first file in the words that it loads', () => {
    const folder = join(import.meta.dirname, '../../components/embed');
    const words = translationsOf('components/embed', 'de');
    const lacking = readdirSync(folder).flatMap((name) => {
      const source = readFileSync(join(folder, name), 'utf8');
      return source.includes("from './said.js'")
        ? saidTexts(name, source).flatMap(({ text }) => (words[text] ? [] : `${name}: ${text}`))
        : [];
    });
    expect(lacking).toEqual([]);
  });
});
