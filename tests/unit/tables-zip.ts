import { deflateRawSync, inflateRawSync } from 'node:zlib';

/** Files inside a packed file, as text: read by hand from the list at its end. */
export async function unzipped(bytes: Uint8Array): Promise<Map<string, string>> {
  const buffer = Buffer.from(bytes);
  const end = buffer.lastIndexOf(Buffer.from([0x50, 0x4b, 5, 6]));
  const parts = new Map<string, string>();
  let at = buffer.readUInt32LE(end + 16);
  for (let i = 0; i < buffer.readUInt16LE(end + 10); i++) {
    const [size, name, extra, comment] = [
      buffer.readUInt32LE(at + 20),
      buffer.readUInt16LE(at + 28),
      buffer.readUInt16LE(at + 30),
      buffer.readUInt16LE(at + 32),
    ];
    const local = buffer.readUInt32LE(at + 42);
    const data = local + 30 + buffer.readUInt16LE(local + 26) + buffer.readUInt16LE(local + 28);
    const packed = buffer.subarray(data, data + size);
    const plain = buffer.readUInt16LE(at + 10) === 0 ? packed : inflateRawSync(packed);
    parts.set(buffer.toString('utf8', at + 46, at + 46 + name), plain.toString('utf8'));
    at += 46 + name + extra + comment;
  }
  return parts;
}

/** Packs files, and may lie about how large they are. */
export function zipped(files: Readonly<Record<string, string | Buffer>>, saidSize?: number): Uint8Array {
  const locals: Buffer[] = [];
  const listed: Buffer[] = [];
  let offset = 0;
  for (const [name, text] of Object.entries(files)) {
    const plain = Buffer.from(text);
    const packed = deflateRawSync(plain);
    const head = (signature: number, size: number) => {
      const buffer = Buffer.alloc(size);
      buffer.writeUInt32LE(signature, 0);
      const at = size === 46 ? 6 : 4;
      buffer.writeUInt16LE(20, at);
      buffer.writeUInt16LE(8, at + 4);
      // Of a very large one nobody gets as far as checking the sum.
      buffer.writeUInt32LE(plain.length > 1e7 ? 0 : crc32(plain), at + 10);
      buffer.writeUInt32LE(packed.length, at + 14);
      buffer.writeUInt32LE(saidSize ?? plain.length, at + 18);
      buffer.writeUInt16LE(Buffer.byteLength(name), at + 22);
      return buffer;
    };
    const local = Buffer.concat([head(0x04034b50, 30), Buffer.from(name), packed]);
    const list = head(0x02014b50, 46);
    list.writeUInt32LE(offset, 42);
    listed.push(Buffer.concat([list, Buffer.from(name)]));
    locals.push(local);
    offset += local.length;
  }
  const list = Buffer.concat(listed);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(listed.length, 8);
  end.writeUInt16LE(listed.length, 10);
  end.writeUInt32LE(list.length, 12);
  end.writeUInt32LE(offset, 16);
  return new Uint8Array(Buffer.concat([...locals, list, end]));
}

function crc32(bytes: Buffer): number {
  let crc = ~0;
  for (const byte of bytes) {
    crc ^= byte;
    for (let i = 0; i < 8; i++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return ~crc >>> 0;
}
