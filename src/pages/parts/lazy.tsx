/** Screens whose code is brought when they are first opened: what a job needs to be worked on comes first. */
import type { ComponentType, VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { t } from '../words/words.ts';

/** A screen that stands in until its code is there. */
export function lazy<Props extends object>(bring: () => Promise<ComponentType<Props>>): (props: Props) => VNode {
  let Known: ComponentType<Props> | null = null;
  return (props) => {
    const [Shown, setShown] = useState<ComponentType<Props> | null>(() => Known);
    const [failed, setFailed] = useState(false);
    useEffect(() => {
      if (Shown !== null) return;
      let gone = false;
      bring()
        .then((brought) => {
          Known = brought;
          if (!gone) setShown(() => brought);
        })
        .catch(() => setFailed(true));
      return () => {
        gone = true;
      };
    }, []);
    if (Shown !== null) return <Shown {...props} />;
    return failed ? (
      <p class="warn" role="alert">
        {t('app.notBrought')}
      </p>
    ) : (
      <p class="loading" role="status">
        {t('app.loading')}
      </p>
    );
  };
}
