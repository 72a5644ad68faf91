/** What is wrong in a file of ours: where, a stable code, what was found and what was expected. An error is a value. */
export interface Problem {
  file: string;
  /** Place in the file: `parts[3].elements[0].a`; line and column where the text is no JSON. */
  path: string;
  code: string;
  found: string;
  expected: string;
}

const MOST_SHOWN = 80;

/** A value as one short line for a message. Never throws, whatever it is given. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number' && !Number.isFinite(value)) return String(value);
  let text: string | undefined;
  try {
    text = JSON.stringify(value);
  } catch {
    text = undefined; // A cycle or a BigInt: no JSON.
  }
  const line = text ?? `a ${typeof value}`;
  return line.length <= MOST_SHOWN ? line : `${line.slice(0, MOST_SHOWN - 1)}…`;
}

/** Path segments as they are written in a file: `parts[3].law.ohms`, `labels["87a"]`. */
export function pathText(segments: readonly PropertyKey[]): string {
  let text = '';
  for (const segment of segments) {
    if (typeof segment === 'number') text += `[${segment}]`;
    else if (/^[$A-Za-z_][$\w]*$/.test(String(segment))) text += text === '' ? String(segment) : `.${String(segment)}`;
    else text += `[${JSON.stringify(String(segment))}]`;
  }
  return text;
}
