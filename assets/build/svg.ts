/** A reader for the drawings: the part of XML that they use, as a tree. */
export interface Element {
  tag: string;
  attributes: Record<string, string>;
  children: Node[];
}
export type Node = Element | { text: string };

export const isElement = (node: Node): node is Element => 'tag' in node;
export const elements = (element: Element): Element[] => element.children.filter(isElement);

const TOKEN = /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<\/([\w:-]+)\s*>|<([\w:-]+)((?:\s+[\w:-]+="[^"]*")*)\s*(\/?)>|[^<]+/g;

export function parseSvg(source: string): Element {
  const root: Element = { tag: '#root', attributes: {}, children: [] };
  const open: Element[] = [root];
  for (const match of source.matchAll(TOKEN)) {
    const [whole, closing, opening, attributes, selfClosing] = match;
    const parent = open[open.length - 1];
    if (closing !== undefined) {
      const closed = open.pop();
      if (closed?.tag !== closing) throw new Error(`</${closing}> closes <${closed?.tag ?? 'nothing'}>`);
    } else if (opening !== undefined) {
      const element: Element = { tag: opening, attributes: readAttributes(attributes ?? ''), children: [] };
      parent.children.push(element);
      if (selfClosing !== '/') open.push(element);
    } else if (!whole.startsWith('<!') && !whole.startsWith('<?') && whole.trim() !== '') {
      parent.children.push({ text: whole });
    }
  }
  const svg = elements(root)[0];
  if (svg?.tag !== 'svg' || open.length !== 1) throw new Error('no whole <svg> element');
  return svg;
}

function readAttributes(source: string): Record<string, string> {
  const attributes: Record<string, string> = {};
  for (const [, name, value] of source.matchAll(/([\w:-]+)="([^"]*)"/g)) attributes[name] = value;
  return attributes;
}

export function findById(element: Element, id: string): Element | undefined {
  if (element.attributes.id === id) return element;
  for (const child of elements(element)) {
    const found = findById(child, id);
    if (found) return found;
  }
  return undefined;
}

export function textOf(element: Element): string {
  return element.children.map((c) => (isElement(c) ? textOf(c) : c.text)).join('');
}
