/** A picture in PNG with its width, which is its height. */
export type Picture = { readonly side_px: number; readonly png: Buffer };

/**
 * An icon file of Windows that holds PNG pictures.
 *
 * The form (from memory of the published file format): 6 bytes of head (0, kind 1, count), for each picture 16 bytes (width, height with 0 for 256,
 * colours 0, reserved 0, planes 1, bits 32, length, place), then the pictures.
 */
export function icoOf(pictures: readonly Picture[]): Buffer {
  const HEAD_B = 6;
  const ENTRY_B = 16;
  const head = Buffer.alloc(HEAD_B + ENTRY_B * pictures.length);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(pictures.length, 4);
  let place = head.length;
  for (const [index, { side_px, png }] of pictures.entries()) {
    const at = HEAD_B + ENTRY_B * index;
    head.writeUInt8(side_px % 256, at);
    head.writeUInt8(side_px % 256, at + 1);
    head.writeUInt16LE(1, at + 4);
    head.writeUInt16LE(32, at + 6);
    head.writeUInt32LE(png.length, at + 8);
    head.writeUInt32LE(place, at + 12);
    place += png.length;
  }
  return Buffer.concat([head, ...pictures.map(({ png }) => png)]);
}

/** The kinds of picture in an icon file of macOS by their width; the second of a pair is for screens of twice the density (from memory). */
const macKinds: readonly (readonly [kind: string, side_px: number])[] = [
  ['icp4', 16],
  ['ic11', 32],
  ['icp5', 32],
  ['ic12', 64],
  ['ic07', 128],
  ['ic13', 256],
  ['ic08', 256],
  ['ic14', 512],
  ['ic09', 512],
  ['ic10', 1024],
];

/** An icon file of macOS: `icns` and the length of the whole, then each picture after its kind and length; numbers big end first. */
export function icnsOf(pictures: readonly Picture[]): Buffer {
  const block = (kind: string, body: Buffer): Buffer => {
    const head = Buffer.alloc(8);
    head.write(kind, 'latin1');
    head.writeUInt32BE(body.length + head.length, 4);
    return Buffer.concat([head, body]);
  };
  const parts = macKinds.flatMap(([kind, side_px]) => {
    const found = pictures.find((picture) => picture.side_px === side_px);
    return found === undefined ? [] : [block(kind, found.png)];
  });
  return block('icns', Buffer.concat(parts));
}
