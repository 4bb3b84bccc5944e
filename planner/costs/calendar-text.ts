const LONGEST_LINE_OCTETS = 75;

/** Text of an iCalendar property: backslash, semicolon, comma and line breaks escaped. Source: RFC 5545 section 3.3.11. */
export function calendarText(text: string): string {
  return text.replace(/[\\;,]/g, (sign) => `\\${sign}`).replace(/\r\n|\r|\n/g, '\\n');
}

/**
 * A content line folded at 75 octets with CRLF and one space; characters of several octets are never cut.
 * Source: RFC 5545 section 3.1.
 */
export function foldedLine(line: string): string {
  const lines: string[] = [];
  let now = '';
  let octets = 0;
  for (const sign of line) {
    const size = octetsOf(sign.codePointAt(0) ?? 0);
    if (octets + size > LONGEST_LINE_OCTETS) {
      lines.push(now);
      now = ' ';
      octets = 1;
    }
    now += sign;
    octets += size;
  }
  lines.push(now);
  return lines.join('\r\n');
}

/** A folded property with escaped text. */
export const calendarLine = (name: string, text: string): string => foldedLine(`${name}:${calendarText(text)}`);

/** Octets of a character in UTF-8. */
function octetsOf(code: number): number {
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x1_0000 ? 3 : 4;
}
