/** Which controls the student has laid eyes or hands on: where they stand is theirs to find, not the screen's to tell. */
import { inCab, type Record } from '../../job/index.ts';
import type { Book } from '../../machine/index.ts';

/** What was seen of the controls up to a step; steps are told to it in their order. */
export class KnownControls {
  private readonly known = new Set<string>();

  constructor(private readonly book: Book) {}

  tell({ entry: { action }, before, after }: Record): void {
    if (action.do === 'operate') this.known.add(action.control);
    for (const { zone } of [before, after]) this.look(zone);
  }

  /** All that is to be seen from a zone; in the cab, all of the cab. */
  private look(zone: string): void {
    const { controls } = this.book;
    const cab = inCab(this.book, zone);
    for (const c of controls) if (c.zone === zone || (cab && inCab(this.book, c.zone))) this.known.add(c.id);
  }

  has(control: string): boolean {
    return this.known.has(control);
  }
}

export function knownControls(book: Book, records: readonly Record[]): KnownControls {
  const known = new KnownControls(book);
  for (const record of records) known.tell(record);
  return known;
}
