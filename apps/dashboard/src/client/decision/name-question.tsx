import { useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';

type NameQuestionProps = {
  open: boolean;
  /** Whom the letter is for, and what was typed. */
  letterFor: string;
  typed: string;
  declines?: boolean;
  onRight: () => void;
  onChange: () => void;
};

/** Asked once before the answer, and no wall: who signs may be the husband or wife of whom the letter names. */
export function NameQuestion({ open, letterFor, typed, declines, onRight, onChange }: NameQuestionProps) {
  const t = useT(letterWords);
  return (
    <Dialog
      open={open}
      title={t('nameTitle')}
      onClose={onChange}
      actions={
        <>
          <Button onClick={onChange}>{t('nameChange')}</Button>
          <Button look="go" onClick={onRight}>
            {t(declines ? 'nameRightDecline' : 'nameRight', { typed })}
          </Button>
        </>
      }
    >
      <div className="stack">
        <p>{t('nameAsk', { letterFor, typed })}</p>
        <p className="soft">{t(declines ? 'nameKeptDecline' : 'nameKept')}</p>
      </div>
    </Dialog>
  );
}
