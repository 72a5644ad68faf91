/** What the window is called: a screen reader says it first, and so does a list of windows. */
import { useEffect } from 'preact/hooks';
import { t } from '../words/words.ts';

export function useTitle(screen: string): void {
  useEffect(() => {
    document.title = `${screen} · ${t('app.name')}`;
  }, [screen]);
}
