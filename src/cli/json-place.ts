/** Where a text stops being JSON. Engines word their errors differently and often give no place, so we look ourselves. */

/** What may stand next: the tokens of JSON, matched at one place of the text. */
const BLANK = /[ \t\n\r]*/y;
const STRING = /"(?:[^"\\\p{Cc}]|[\u007f-\u009f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/uy;
const SCALAR = /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.])/y;

type Wanted = 'value' | 'key' | 'key or end' | 'value or end' | 'colon' | 'comma or end';

/** Offset of the first character that cannot stand where it stands; the text's length where it ends too early. */
export function jsonErrorOffset(text: string): number {
  let at = 0;
  const skip = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const match = pattern.exec(text);
    if (match !== null) at += match[0].length;
    return match !== null;
  };
  const open: ('{' | '[')[] = [];
  let wanted: Wanted = 'value';
  for (;;) {
    skip(BLANK);
    const char = text[at];
    const inside = open.at(-1);
    if (char === undefined) return text.length;
    if (wanted === 'colon') {
      if (char !== ':') return at;
      at++;
      wanted = 'value';
    } else if (wanted.endsWith('end') && char === (inside === '{' ? '}' : ']')) {
      at++;
      open.pop();
      if (open.length === 0) {
        skip(BLANK);
        return at;
      }
      wanted = 'comma or end';
    } else if (wanted === 'comma or end') {
      if (char !== ',') return at;
      at++;
      wanted = inside === '{' ? 'key' : 'value';
    } else if (wanted.startsWith('key')) {
      if (!skip(STRING)) return at;
      wanted = 'colon';
    } else if (char === '{' || char === '[') {
      at++;
      open.push(char);
      wanted = char === '{' ? 'key or end' : 'value or end';
    } else {
      if (!skip(STRING) && !skip(SCALAR)) return at;
      if (open.length === 0) {
        skip(BLANK);
        return at;
      }
      wanted = 'comma or end';
    }
  }
}
