import type { Problem } from '@underlath/contract';
import { v7 } from 'uuid';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { Part } from '../desk/page.tsx';
import { type EstimateDraft, withCell } from './draft.ts';

type ExclusionsEditorProps = {
  draft: EstimateDraft;
  change: (make: (draft: EstimateDraft) => EstimateDraft) => void;
  problem: Problem | null;
};

/** What the price does not cover, in the client's words. */
export function ExclusionsEditor({ draft, change, problem }: ExclusionsEditorProps) {
  const set = (key: string, column: 'en' | 'es') => (value: string) =>
    change((old) => ({ ...old, exclusions: withCell(old.exclusions, { key, column, value }) }));
  return (
    <Part
      title="What the price does not cover"
      lead="Said in the letter, in both languages: painting beyond the opened wall, what lies behind closed walls."
    >
      <ul className="exclusions">
        {draft.exclusions.map(({ key, en = '', es = '' }, at) => (
          <li key={key}>
            <TextInput
              label={`Not covered, ${at + 1}`}
              value={en}
              maxLength={400}
              error={errorAt(problem, `/exclusions/${at}/en`)}
              onChange={set(key, 'en')}
            />
            <TextInput
              label={`The same in Spanish, ${at + 1}`}
              lang="es"
              value={es}
              maxLength={400}
              error={errorAt(problem, `/exclusions/${at}/es`)}
              onChange={set(key, 'es')}
            />
            <Button
              look="quiet"
              onClick={() =>
                change((old) => ({ ...old, exclusions: old.exclusions.filter((each) => each.key !== key) }))
              }
            >
              Remove<span className="hidden-text"> what is not covered, {at + 1}</span>
            </Button>
          </li>
        ))}
      </ul>
      <Button
        onClick={() => change((old) => ({ ...old, exclusions: [...old.exclusions, { key: v7(), en: '', es: '' }] }))}
      >
        Add what is not covered
      </Button>
    </Part>
  );
}
