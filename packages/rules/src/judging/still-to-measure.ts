import { type Check, fieldAt, joinTexts, type Text, text } from '../kernel/index.ts';

/** The names of missing inputs in the words of the form. */
export function stillToMeasureWords(check: Check, missing: readonly string[]): Text {
  const labels = missing.map((path) => {
    const steps = path.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step));
    return fieldAt(check.inputs, steps)?.label ?? text(path, path);
  });
  const names = joinTexts([...new Map(labels.map((label) => [label.en, nameIn(label)])).values()], '; ');
  return text(`Still to be measured: ${endSentence(names.en)}`, `Falta medir: ${endSentence(names.es)}`);
}

/** What a form adds to a name that may stay open is out of place where it is asked for. */
const nameIn = ({ en, es }: Text): Text => text(en.replace(/, if known$/, ''), es.replace(/, si se sabe$/, ''));

/** A question already ends its sentence. */
const endSentence = (words: string): string => (words.endsWith('?') ? words : `${words}.`);
