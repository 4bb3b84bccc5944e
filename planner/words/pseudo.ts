const accents: Readonly<Record<string, string>> = Object.fromEntries(
  [...'aàeèiìoòuùyýcçnñsšzžAÀEÈIÌOÒUÙCÇNÑSŠ'].flatMap((letter, at, all) =>
    at % 2 === 0 ? [[letter, all[at + 1] ?? letter]] : [],
  ),
);
const LONGER = 0.4;

/**
 * A message of the test language: every letter that can bear one gets an accent, and the text grows by 40 %, as
 * translations from English do. Arguments and tags stay. Text stands at even depth of braces: outside all, and inside
 * the choices of a plural.
 */
export function pseudoOf(message: string): string {
  let depth = 0;
  let inTag = false;
  let out = '';
  let letters = 0;
  const lengthen = (): void => {
    const more = Math.ceil(letters * LONGER);
    if (letters > 0) out += '~'.repeat(more);
    letters = 0;
  };
  for (const sign of message) {
    const isText = depth % 2 === 0 && !inTag;
    if (sign === '{') {
      if (isText) lengthen();
      depth += 1;
    } else if (sign === '}') {
      if (isText) lengthen();
      depth -= 1;
    } else if (sign === '<' && isText) {
      lengthen();
      inTag = true;
    } else if (sign === '>' && inTag) inTag = false;
    else if (isText) {
      if (/\s/.test(sign)) lengthen();
      else if (/\p{L}/u.test(sign)) letters += 1;
      out += accents[sign] ?? sign;
      continue;
    }
    out += sign;
  }
  lengthen();
  return out;
}
