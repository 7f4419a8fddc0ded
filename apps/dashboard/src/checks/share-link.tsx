import { useState } from 'react';
import { useT } from '../shared/i18n/locale.tsx';
import { checksWords } from '../shared/i18n/messages/checks.ts';
import { Button } from '../shared/ui/button.tsx';
import { TextInput } from '../shared/ui/field.tsx';
import { useAnnounce } from '../shared/ui/status.tsx';

/** Copies the link and says so. Where the browser does not let a page copy, the link stands there to be copied by hand. */
export function ShareLink({ link }: { link: string }) {
  const t = useT(checksWords);
  const announce = useAnnounce();
  const [failed, setFailed] = useState(false);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(link);
      setFailed(false);
      announce(t('shared'));
    } catch {
      // No permission, or no clipboard outside https: the person copies it.
      setFailed(true);
    }
  };
  return (
    <div className="share">
      <Button look="go" onClick={copy}>
        {t('share')}
      </Button>
      {failed && (
        <div role="status">
          <p>{t('shareFailed')}</p>
          <TextInput
            label={t('link')}
            value={link}
            readOnly
            onChange={() => {}}
            onFocus={(event) => event.target.select()}
          />
        </div>
      )}
    </div>
  );
}
