import { inflateSync } from 'node:zlib';

/** How many pages a PDF has. Some browsers write down what a page is as it stands, some within packed streams. */
export function pagesIn(pdf: Buffer): number {
  const text = pdf.toString('latin1');
  const packed = [...text.matchAll(/\/Type\s*\/ObjStm[\s\S]*?stream\r?\n([\s\S]*?)\r?\nendstream/g)];
  const parts = packed.map(([, stream]) => inflateSync(Buffer.from(stream!, 'latin1')).toString('latin1'));
  return [text, ...parts].flatMap((part) => part.match(/\/Type\s*\/Page(?![s\w])/g) ?? []).length;
}
