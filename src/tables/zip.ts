import { ok, type Result, refuse } from '../problem.js';
import { phrase, say } from '../words/index.js';
import { MOST_PARTS, MOST_UNPACKED } from './limits.js';

/** One file inside a workbook, as the list at the end of the workbook has it. */
interface Part {
  readonly name: string;
  readonly method: number;
  readonly packed: Uint8Array;
}

const broken = refuse(
  'broken-workbook',
  phrase('This workbook is damaged: what is inside cannot be unpacked.'),
  phrase('Copy or download it again, or save it anew where it was made.'),
);

const tooLarge = () =>
  refuse(
    'workbook-too-large',
    say`This workbook unpacks to more than ${MOST_UNPACKED / 1024 / 1024} MB; no table that a book could hold does.`,
    say`Split it where it was made, or save the one worksheet as CSV.`,
  );

const END = 0x06054b50;
const LISTED = 0x02014b50;
const LOCAL = 0x04034b50;

/** The files inside, by the list at the end; undefined where there is none that can be followed. */
function partsOf(bytes: Uint8Array): Part[] | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = bytes.length - 22;
  const first = Math.max(0, bytes.length - 65_557);
  while (end >= first && view.getUint32(end, true) !== END) end--;
  if (end < first) return undefined;
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  const parts: Part[] = [];
  for (let i = 0; i < count; i++) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== LISTED) return undefined;
    const size = view.getUint32(at + 20, true);
    const lengths = [28, 30, 32].map((offset) => view.getUint16(at + offset, true)) as [
      number,
      number,
      number,
    ];
    const local = view.getUint32(at + 42, true);
    if (local + 30 > bytes.length || view.getUint32(local, true) !== LOCAL) return undefined;
    const data = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    if (data + size > bytes.length) return undefined;
    parts.push({
      name: new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + lengths[0])),
      method: view.getUint16(at + 10, true),
      packed: bytes.subarray(data, data + size),
    });
    at += 46 + lengths[0] + lengths[1] + lengths[2];
  }
  return parts;
}

/** How much a packed file comes to, counted by unpacking it: what it says of itself need not be true. */
async function unpackedSize(packed: Uint8Array, most: number): Promise<number> {
  const stream = new Blob([packed as Uint8Array<ArrayBuffer>])
    .stream()
    .pipeThrough(new DecompressionStream('deflate-raw'));
  const reader = stream.getReader();
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return size;
    size += value.length;
    if (size > most) {
      await reader.cancel();
      return size;
    }
  }
}

/** Makes sure that a workbook can be unpacked, and stays within bounds when it is. */
export async function checkedZip(bytes: Uint8Array): Promise<Result<readonly string[]>> {
  let parts: Part[] | undefined;
  try {
    parts = partsOf(bytes);
  } catch {
    return broken;
  }
  if (!parts) return broken;
  if (parts.length > MOST_PARTS) return tooLarge();
  let total = 0;
  for (const { method, packed } of parts) {
    try {
      total += method === 0 ? packed.length : await unpackedSize(packed, MOST_UNPACKED - total);
    } catch {
      return broken;
    }
    if (total > MOST_UNPACKED) return tooLarge();
  }
  const names = parts.map(({ name }) => name);
  if (names.some((name) => name.startsWith('xl/workbook'))) return ok(names);
  return refuse(
    'not-a-table',
    names.includes('mimetype') || names.includes('content.xml')
      ? say`This file is an OpenDocument file, not a workbook of ECMA-376 (.xlsx).`
      : say`This packed file holds no workbook.`,
    say`Save the table as .xlsx or CSV, and bring in that.`,
  );
}
