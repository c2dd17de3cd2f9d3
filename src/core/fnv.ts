/** A short mark of a text or of bytes, by which the same content is known again; no protection against anybody. */

/** 64-bit FNV-1a: offset basis and prime as in the IETF draft "The FNV Non-Cryptographic Hash Algorithm", in four parts of 16 bits. */
export function fnv1a64(bytes: Iterable<number>): string {
  // Lowest part first: offset basis cbf29ce484222325; the prime 100000001b3 is 2^40 + 0x1b3.
  let [a, b, c, d] = [0x2325, 0x8422, 0x9ce4, 0xcbf2];
  for (const byte of bytes) {
    a ^= byte;
    const [a1, b1, c1, d1] = [a * 0x1b3, b * 0x1b3, c * 0x1b3 + (a << 8), d * 0x1b3 + (b << 8)];
    a = a1 & 0xffff;
    const b2 = b1 + (a1 >>> 16);
    b = b2 & 0xffff;
    const c2 = c1 + (b2 >>> 16);
    c = c2 & 0xffff;
    d = (d1 + (c2 >>> 16)) & 0xffff;
  }
  return [d, c, b, a].map((part) => part.toString(16).padStart(4, "0")).join("");
}
