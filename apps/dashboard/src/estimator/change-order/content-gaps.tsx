import { Link } from '@tanstack/react-router';
import { type ContentReview, US_STATES, type UsState } from '@underlath/contract';
import { BASIS_WORDS } from '@underlath/rules/kernel';
import { Stamp } from '../../shared/ui/stamp.tsx';

/** What a change order lacks of the list for its state, with where each is asked for. It says of none that it is valid. */
export function ContentGaps({ review, projectId }: { review: ContentReview; projectId: string }) {
  const { state, stateName, checkedOn, missing, cautions } = review;
  const name = stateName ?? (state ? US_STATES[state as UsState] : null);
  return (
    <section aria-labelledby="content-gaps" className="content-gaps">
      <h3 id="content-gaps">What a written change should carry{name ? `, ${name}` : ''}</h3>
      {state === null && (
        <p>
          The state of the site is not set.{' '}
          <Link to="/projects/$projectId/details" params={{ projectId }}>
            Set it in the project details
          </Link>
          .
        </p>
      )}
      {missing.length === 0 ? (
        <p>It carries everything on the list here.</p>
      ) : (
        <ul className="content-missing">
          {missing.map(({ anyOf, words, weight, source }) => (
            <li key={`${anyOf.join()} ${source.id}`}>
              <b>Missing: {words.en}.</b> {weight === 'law' ? 'A law asks for it' : 'Care asks for it'}
              <span className="soft">
                {': '}
                {source.title}, {source.section}, {source.edition} ({BASIS_WORDS[source.basis].en})
              </span>
            </li>
          ))}
        </ul>
      )}
      <ul className="soft small content-cautions">
        {checkedOn && (
          <li>
            Sources last looked at <Stamp at={checkedOn} />.
          </li>
        )}
        {cautions.map(({ en }) => (
          <li key={en}>{en}</li>
        ))}
      </ul>
    </section>
  );
}
