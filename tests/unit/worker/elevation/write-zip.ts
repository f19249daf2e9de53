import { deflateRawSync, gzipSync } from 'node:zlib'

/** The checksum of both formats; gzip writes it before its last four bytes (RFC 1952, 2.3). */
const checksum = (bytes: Uint8Array): number => gzipSync(bytes, { level: 0 }).readUInt32LE(gzipSync(bytes, { level: 0 }).length - 8)

/** A .zip by the published layout (PKWARE APPNOTE 4.3.7, 4.3.12 and 4.3.16; from memory), deflated by zlib. */
export function zipBytes(files: Readonly<Record<string, Uint8Array>>): Uint8Array {
  const bodies: Buffer[] = [], directory: Buffer[] = []
  let at = 0
  for (const [path, bytes] of Object.entries(files)) {
    const name = Buffer.from(path), packed = deflateRawSync(bytes)
    // From "version needed" on, both headers say the same.
    const common = Buffer.alloc(26)
    common.writeUInt16LE(20, 0)
    common.writeUInt16LE(8, 4)
    common.writeUInt32LE(checksum(bytes), 10)
    common.writeUInt32LE(packed.length, 14)
    common.writeUInt32LE(bytes.length, 18)
    common.writeUInt16LE(name.length, 22)
    const body = Buffer.concat([Buffer.from('PK\x03\x04'), common, name, packed])
    const rest = Buffer.alloc(14)
    rest.writeUInt32LE(at, 10)
    directory.push(Buffer.concat([Buffer.from('PK\x01\x02\x14\x00'), common, rest, name]))
    bodies.push(body)
    at += body.length
  }
  const listed = Buffer.concat(directory), end = Buffer.alloc(22)
  end.write('PK\x05\x06', 'latin1')
  end.writeUInt16LE(directory.length, 8)
  end.writeUInt16LE(directory.length, 10)
  end.writeUInt32LE(listed.length, 12)
  end.writeUInt32LE(at, 16)
  return new Uint8Array(Buffer.concat([...bodies, listed, end]))
}
