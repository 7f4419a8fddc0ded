import { findEntry } from '@underlath/rules';
import { layOut } from '@underlath/rules/drawing';
import { useLocale } from '../i18n/locale.tsx';
import { Marks, sheetBox, useCheckDrawing } from './check-drawing.tsx';
import './drawing.css';

/** What a person picks from: the check's own drawing, small and without words; its name stands beside it. */
export function CheckPicture({ checkId }: { checkId: string }) {
  const { drawing } = useCheckDrawing(findEntry(checkId));
  const { locale } = useLocale();
  return (
    <svg className="drawing check-picture" viewBox={sheetBox} aria-hidden="true">
      {drawing && <Marks marks={layOut(drawing, { locale })} />}
    </svg>
  );
}
