import { clientRoutes } from '@underlath/contract';
import { addressOf } from '../../shared/api/call.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { Trouble } from '../trouble.tsx';
import { useLetterId } from './letter-id.ts';

/** The PDF of exactly this version, and printing. */
export function CopyButtons() {
  const t = useT(letterWords);
  const { locale } = useLocale();
  const params = { letterId: useLetterId() };
  return (
    <div className="row no-print">
      <a className={buttonClass()} href={addressOf(clientRoutes.clientPdf, { params, query: { locale } })} download>
        {t('keepPdf')}
      </a>
      <Button onClick={() => window.print()}>{t('keepPrint')}</Button>
    </div>
  );
}

/** A copy to keep, and the way to close the letter on a device that is not the owner's own. */
export function KeepCopy({ onClosed }: { onClosed: () => void }) {
  const t = useT(letterWords);
  const params = { letterId: useLetterId() };
  const close = useChange(clientRoutes.closeClientLink, { onDone: onClosed });
  return (
    <section aria-labelledby="keep" className="no-print">
      <h2 id="keep">{t('keepTitle')}</h2>
      <p>{t('keepHelp')}</p>
      <CopyButtons />
      <p className="close-help">{t('closeHelp')}</p>
      <Button look="quiet" busy={close.isPending} onClick={() => close.mutate({ params })}>
        {t('closeLetter')}
      </Button>
      {close.error && <Trouble error={close.error} />}
    </section>
  );
}
