import type { LinkRole, LoadPathKind } from '@underlath/rules';
import { mayBeWithout, notListedIn } from '@underlath/rules';
import { Button } from '../../shared/ui/button.tsx';
import { FieldError } from '../../shared/ui/field.tsx';
import type { DraftSegment } from './draft.ts';
import { roleWord } from './view.tsx';

type NotListedProps = {
  kind: LoadPathKind;
  segment: DraftSegment;
  error: string | undefined;
  onAdd: (role: LinkRole, name: string) => void;
  onWithout: (without: readonly LinkRole[]) => void;
};

/** The usual links a chain does not list: each is added, or, where houses are built without it, said not to be there. */
export function NotListed({ kind, segment, error, onAdd, onWithout }: NotListedProps) {
  const missing = notListedIn(kind, segment);
  const without = segment.without.filter((role) => !segment.links.some((link) => link.role === role));
  const optional = mayBeWithout(kind);
  if (missing.length === 0 && without.length === 0) return null;
  return (
    <section className="not-listed" aria-label="Usual links that are not listed">
      {missing.length > 0 && <p>Not listed, so it counts as not seen:</p>}
      {missing.map((role) => (
        <p key={role} className="row">
          <b>{roleWord(role)}</b>
          <Button look="quiet" onClick={() => onAdd(role, roleWord(role))}>
            {`Add ${roleWord(role).toLowerCase()}`}
          </Button>
          {optional.includes(role) && (
            <Button look="quiet" onClick={() => onWithout([...without, role])}>
              There is none
            </Button>
          )}
        </p>
      ))}
      {without.map((role) => (
        <p key={role} className="row">
          <span>{`There is no ${roleWord(role).toLowerCase()} in this line.`}</span>
          <Button look="quiet" onClick={() => onWithout(without.filter((one) => one !== role))}>
            Take that back
          </Button>
        </p>
      ))}
      <FieldError id={`${segment.key}-without`}>{error}</FieldError>
    </section>
  );
}
