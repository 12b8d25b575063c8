import { inflateSync } from 'node:zlib';

/** How many pages a PDF has. */
export const pagesIn = (pdf: Buffer): number => count(pdf, /\/Type\s*\/Page(?![s\w])/g);

/** Whether anything is written on the pages of a PDF: blank ones need no type to print with. */
export const hasWords = (pdf: Buffer): boolean => count(pdf, /\/Type\s*\/Font(?!\w)/g) > 0;

/** Some browsers write down what a page is as it stands, some within packed streams. */
function count(pdf: Buffer, what: RegExp): number {
  const text = pdf.toString('latin1');
  const packed = [...text.matchAll(/\/Type\s*\/ObjStm[\s\S]*?stream\r?\n([\s\S]*?)\r?\nendstream/g)];
  const parts = packed.map(([, stream]) => inflateSync(Buffer.from(stream!, 'latin1')).toString('latin1'));
  return [text, ...parts].flatMap((part) => part.match(what) ?? []).length;
}
