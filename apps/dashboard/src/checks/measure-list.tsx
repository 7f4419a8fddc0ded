import { allowedWords, type Check, type Field, type Fields } from '@underlath/rules';
import { keysOf, letterAt } from '@underlath/rules/drawing';
import { leftOutWords, say } from '@underlath/rules/kernel';
import { DrawingSheet, useCheckDrawing } from '../shared/drawing/check-drawing.tsx';
import { useLocale, useT } from '../shared/i18n/locale.tsx';
import { checksWords } from '../shared/i18n/messages/checks.ts';

/** The drawing with a letter at each thing that is measured, and under it every input with how to measure it. */
export function MeasureList({ check }: { check: Check }) {
  const t = useT(checksWords);
  const { drawing, failed } = useCheckDrawing(check);
  const keys = drawing ? keysOf(drawing) : [];
  return (
    <section aria-labelledby="measure">
      <h2 id="measure">{t('measure')}</h2>
      <figure className="sheet-figure">
        <DrawingSheet drawing={drawing} failed={failed} options={{ letters: true }} />
      </figure>
      <Rows fields={check.inputs} before="" letterOf={(path) => letterOf(keys, path)} />
    </section>
  );
}

const letterOf = (keys: readonly string[], path: string): string => {
  const at = keys.indexOf(path);
  return at < 0 ? '' : letterAt(at);
};

type RowsProps = { fields: Fields; before: string; letterOf: (path: string) => string };

function Rows({ fields, before, letterOf }: RowsProps) {
  return (
    <ul className="measure-list">
      {Object.entries(fields).map(([name, field]) => (
        <Row key={name} path={before + name} field={field} letterOf={letterOf} />
      ))}
    </ul>
  );
}

function Row({ path, field, letterOf }: { path: string; field: Field; letterOf: (path: string) => string }) {
  const t = useT(checksWords);
  const { locale } = useLocale();
  const letter = letterOf(path);
  const needed = field.needed ?? 'always';
  const leftOut = leftOutWords(field);
  const parts = field.kind === 'group' ? field.fields : field.kind === 'list' ? field.item : undefined;
  return (
    <li>
      <div className="measure-row">
        <span className="measure-letter">
          {letter && (
            <>
              <span className="hidden-text">{t('letter')} </span>
              {letter}
            </>
          )}
        </span>
        <div>
          <p>
            <b>{say(field.label, locale)}</b>
            {needed !== 'always' && (
              <span className="soft">, {needed === 'optional' ? t('ifKnown') : t('inSomeCases')}</span>
            )}
          </p>
          {field.howToMeasure && <p>{say(field.howToMeasure, locale)}</p>}
          {leftOut && <p className="soft">{say(leftOut, locale)}</p>}
          <p className="soft small">{say(allowedWords(field), locale)}</p>
        </div>
      </div>
      {parts && <Rows fields={parts} before={`${path}.`} letterOf={letterOf} />}
    </li>
  );
}
