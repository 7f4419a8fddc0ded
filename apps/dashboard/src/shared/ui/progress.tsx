import { useId } from 'react';
import { useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import { Button } from './button.tsx';
import './ui.css';

type ProgressProps = {
  label: string;
  /** 0..1, or null while the length of the work is not known. */
  value: number | null;
  detail?: string;
  onCancel?: () => void;
};

export function Progress({ label, value, detail, onCancel }: ProgressProps) {
  const t = useT(commonWords);
  const id = useId();
  const percent = value === null ? null : Math.round(Math.min(1, Math.max(0, value)) * 100);
  return (
    <div className="progress">
      <div className="progress-words">
        <span id={id}>{label}</span>
        <span className="soft">{detail ?? (percent === null ? '' : `${percent}%`)}</span>
      </div>
      <progress aria-labelledby={id} max={100} {...(percent === null ? {} : { value: percent })}>
        {percent === null ? t('working') : t('percentDone', { percent })}
      </progress>
      {onCancel && (
        <Button look="quiet" onClick={onCancel}>
          {t('cancel')}
        </Button>
      )}
    </div>
  );
}
