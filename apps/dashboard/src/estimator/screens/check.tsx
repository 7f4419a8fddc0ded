import { useParams } from '@tanstack/react-router';
import { type Check, type CheckDescription, describeCheck, findCheck } from '@underlath/rules';
import { CheckPicture } from '../../shared/drawing/check-picture.tsx';
import { Sources } from '../../shared/measure/outcome-view.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { Page, Part } from '../parts/page.tsx';
import { TryCheck } from '../parts/try-check.tsx';
import '../order.css';

const originWords: Record<CheckDescription['cases'][number]['origin'], string> = {
  published: 'published',
  memory: 'from memory, to be confirmed',
  'hand-worked': 'worked by hand',
  'common-practice': 'common practice',
};

export function CheckScreen() {
  const { checkId } = useParams({ from: '/in/desk/checks/$checkId' });
  const check = findCheck(checkId);
  if (!check) {
    return (
      <Page title="Check">
        <EmptyState title={`There is no check “${checkId}”`}>
          <p>The list of checks shows every one of this version.</p>
        </EmptyState>
      </Page>
    );
  }
  return <CheckSheet check={check} />;
}

function CheckSheet({ check }: { check: Check }) {
  const words = describeCheck(check, 'en');
  return (
    <Page title={words.title} lead={words.question}>
      <div className="check-top">
        <CheckPicture checkId={check.id} />
        <div className="stack">
          <p>{words.why}</p>
          <p>{words.ifNot}</p>
        </div>
      </div>
      <Part
        title="Try it"
        lead="Nothing is stored. The verdict appears as you measure; the server can be asked for its own."
      >
        <TryCheck check={check} />
      </Part>
      <Part title="Where its rule comes from">
        <Sources sources={words.sources} />
        <p className="soft">Editions: {words.editions.map((edition) => edition.title).join('; ')}.</p>
      </Part>
      <Part title="Worked cases" lead="Each is run as a test of this check.">
        <ul className="cases">
          {words.cases.map((each) => (
            <li key={each.name}>
              {each.name}
              <span className="soft small">
                {originWords[each.origin]}: {each.source}
              </span>
            </li>
          ))}
        </ul>
      </Part>
      <Part title="What it does not cover">
        <ul className="bulleted">
          {words.doesNotCover.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      </Part>
    </Page>
  );
}
