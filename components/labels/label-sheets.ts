import { phrase } from '../../src/words/index.js';

/** A way to cut up a page into labels. Lengths in millimetres. */
export interface LabelSize {
  readonly id: string;
  readonly words: string;
  readonly width: number;
  readonly height: number;
}

/** Sizes that fill A4 and Letter alike, within margins of 10 mm: common shapes, cut along the lines. */
export const LABEL_SIZES: readonly LabelSize[] = [
  { id: 'small', words: phrase('small, for lids (4 across)'), width: 46, height: 30 },
  { id: 'usual', words: phrase('usual, for jars (3 across)'), width: 62, height: 36 },
  { id: 'large', words: phrase('large, for freezer bags (2 across)'), width: 94, height: 42 },
];

export const sizeCalled = (id: string): LabelSize =>
  LABEL_SIZES.find((size) => size.id === id) ?? LABEL_SIZES[1]!;

/** How labels look, on screen and on paper alike. */
export const LABEL_RULES = `
  .labels { display: flex; flex-wrap: wrap; list-style: none; margin: 0; padding: 0; color: #000; }
  .label { box-sizing: border-box; display: grid; grid-template-rows: auto 1fr auto; gap: 0.5mm; overflow: hidden; padding: 2mm 2.5mm; border: 0.2mm dashed #999; background: #fff; break-inside: avoid; line-height: 1.2; font-size: 8pt; }
  .label .food { font-size: 12pt; font-weight: 700; line-height: 1.1; overflow-wrap: anywhere; }
  .label .kept { display: block; font-size: 8pt; font-weight: 400; }
  .label .when { font-size: 10pt; align-self: center; }
  .label .best { display: block; font-size: 7.5pt; }
  .label .where { display: flex; justify-content: space-between; gap: 2mm; font-size: 7.5pt; align-items: end; }
  .label .id { font-family: ui-monospace, 'DejaVu Sans Mono', monospace; font-size: 6.5pt; white-space: nowrap; }
  .label.long .food { font-size: 10pt; }
  .small .label { padding: 1.5mm 2mm; }
  .small .label .food { font-size: 10pt; }
  .small .label.long .food { font-size: 8pt; }
  .small .label .when { font-size: 8.5pt; }
  .small .label .best { display: none; }
  .large .label .food { font-size: 15pt; }
  .large .label.long .food { font-size: 12pt; }
  .large .label .when { font-size: 12pt; }
`;
