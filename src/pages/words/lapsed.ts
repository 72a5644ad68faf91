/** Since when a precaution is no longer in place, in words. */
import type { Record } from '../../job/index.ts';
import type { Book } from '../../machine/index.ts';
import { controlName } from './names.ts';
import { t } from './words.ts';

export function sinceText(book: Book, { entry: { action }, after }: Record): string {
  switch (action.do) {
    case 'helper':
      return t(action.call ? 'lapsed.helperCame' : 'lapsed.helperWent');
    case 'open':
      return t('lapsed.opened');
    case 'walk':
      return t('lapsed.walked');
    case 'operate':
      return t('lapsed.moved', { control: controlName(book, action.control).toLowerCase() });
    case 'verify':
      return t('lapsed.turned');
    default:
      return t(after.helperUntilMs === null ? 'lapsed.helperWent' : 'lapsed.since');
  }
}
