import { type FindingRow, type Location, type Rectangle, routes, type StoredLoadPath } from '@underlath/contract';
import { LINK_ROLE_WORDS, usualWords } from '@underlath/rules';
import { pounds, REFERRAL_WORDS } from '@underlath/rules/kernel';
import { sized } from '@underlath/rules/places';
import type { CSSProperties } from 'react';
import { useRoute } from '../../shared/api/hooks.ts';
import { ChainColumn, ChainOnWall, countedWords, linkInk, notListedLinks } from '../../shared/drawing/chain.tsx';
import { Elevation } from '../../shared/drawing/elevation.tsx';
import type { Frame } from '../../shared/drawing/frame.ts';
import { Unspoken } from '../../shared/drawing/marks.tsx';
import { nailSpots } from '../../shared/drawing/nail-spots.ts';
import { MeasureScale, ShareBar } from '../../shared/drawing/scales.tsx';
import { Sources } from '../../shared/measure/outcome-view.tsx';
import { Facts } from '../../shared/ui/facts.tsx';
import { SeverityMark, SeverityNote, VerdictWord } from '../../shared/ui/severity.tsx';
import { Part } from '../desk/page.tsx';
import { isClosed } from '../desk/words.ts';

type LoadPathViewProps = { path: StoredLoadPath; place: Location; findings: readonly FindingRow[] };

/** What a line is worth: the answer in words, the wall with its links, the chain, what to open next. */
export function LoadPathView({ path, place, findings }: LoadPathViewProps) {
  const { answer } = path;
  const [worth, ...reasons] = answer.reasons;
  return (
    <>
      <SeverityNote severity={answer.severity}>
        <p className="load-path-answer">
          <VerdictWord verdict={answer.verdict} />. <b>{worth}</b>
        </p>
        {answer.severity === 'make-safe' && answer.cautions[0] && <p>{answer.cautions[0]}</p>}
      </SeverityNote>
      <LineDrawing path={path} place={place} findings={findings} />
      <Strips path={path} />
      <FromAbove path={path} />
      {answer.ratio !== null && (
        <MeasureScale
          value={answer.ratio}
          limit={1}
          moreIsBetter={false}
          format={(share) => `${answer.known ? '' : 'at least '}${Math.round(share * 100)}%`}
          limitName="all that may be counted"
          from={0}
        />
      )}
      <ul className="bulleted">
        {reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
      {answer.referrals.length > 0 && (
        <p>
          <b>Belongs to: {answer.referrals.map((who) => REFERRAL_WORDS[who].en).join(', ')}.</b>
        </p>
      )}
      <OpenNext path={path} />
      <Sources sources={answer.sources} />
      <ul className="bulleted soft">
        {answer.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </>
  );
}

/** The wall itself where the links have places on it; a column of signs for a line that stands on no elevation. */
function LineDrawing({ path, place, findings }: LoadPathViewProps) {
  const onWall = path.kind === 'wall-line' && sized(place) !== null;
  const surveyed = findings.filter(
    ({ checkId, state }) => checkId === 'shear-wall.nail-survey' && state !== 'withdrawn',
  );
  if (onWall)
    return (
      <Elevation
        place={place}
        findings={findings
          .filter(({ state }) => state !== 'withdrawn')
          .map(({ id, number, title, severity, extent, state }) => ({
            id,
            number,
            title,
            severity,
            extent,
            closed: isClosed(state),
          }))}
        labels="numbers"
        maxHeightPx={460}
        extras={{ holdDowns: holdDownsOf(path) }}
        overlay={(frame) => (
          <>
            {surveyed.map(
              ({ id, extent }) => extent && <SurveyedNails key={id} findingId={id} extent={extent} frame={frame} />,
            )}
            <ChainOnWall path={path} frame={frame} />
          </>
        )}
      />
    );
  return path.answer.segments.map(({ name }, at) => (
    <ChainColumn
      key={name}
      path={path}
      segmentAt={at}
      title={`${path.name}: the links of ${name}, as the load runs down`}
    />
  ));
}

/** Hold-downs as steel where their links stand; dashed while nobody has seen them. */
const holdDownsOf = ({ segments }: StoredLoadPath) =>
  segments.flatMap(({ links }) =>
    links.flatMap(({ role, at, state }) =>
      role === 'hold-down' && at ? [{ xIn: at.xIn + at.widthIn / 2, unseen: state === 'unseen' }] : [],
    ),
  );

/** The nails somebody counted, along the edges of the panel, at their average distance: where each bad one is was not recorded. */
function SurveyedNails({ findingId, extent, frame }: { findingId: string; extent: Rectangle; frame: Frame }) {
  const finding = useRoute(routes.getFinding, { params: { findingId } });
  const inputs = finding.data?.judgments.toSorted((a, b) => b.seq - a.seq)[0]?.inputs;
  return (
    <Unspoken>
      {nailSpots(extent, inputs).map(({ xIn, yIn }) => (
        <circle key={`${xIn} ${yIn}`} className="d-ink" cx={frame.x(xIn)} cy={frame.y(yIn)} r={1.7} />
      ))}
    </Unspoken>
  );
}

/** Each link with its bar, its share and its pounds: the same as the drawing, for reading and for listening. */
function Strips({ path }: { path: StoredLoadPath }) {
  const { answer } = path;
  const many = answer.segments.length > 1;
  return answer.segments.map((segment) => (
    <section key={segment.name} aria-label={many ? segment.name : 'The chain, link by link'}>
      {many && (
        <h4>
          {segment.name}
          {segment.remaining !== null && (
            <span className="soft"> {Math.round(segment.remaining * 100)}% of what it was meant for</span>
          )}
        </h4>
      )}
      <ol className="chain-strip">
        {segment.links.map((link) => {
          const governs = segment.governing === link.name;
          const ink = linkInk(governs, answer.severity);
          return (
            <li
              key={link.name}
              className={governs ? 'chain-governs' : undefined}
              style={ink ? ({ '--chain-ink': ink } as CSSProperties) : undefined}
            >
              <b>{link.name}</b>
              <ShareBar share={link.remaining} unseen={link.state === 'unseen'} />
              <span>{countedWords(link)}</span>
              {link.intendedLb !== null && (
                <span className="soft">
                  {link.momentOpen && 'at most '}
                  {link.atMostLb === null
                    ? pounds(link.intendedLb)
                    : `${pounds(link.atMostLb)} of ${pounds(link.intendedLb)}`}
                </span>
              )}
              {governs && (
                <span className="chain-weakest">
                  <SeverityMark severity={answer.severity} compact /> <b>weakest</b>
                </span>
              )}
            </li>
          );
        })}
        {notListedLinks(path.kind, segment.notListed).map(({ role, words }) => (
          <li key={role}>
            <b>{words}</b>
            <ShareBar share={null} unseen />
            <span>not listed, not seen</span>
          </li>
        ))}
      </ol>
    </section>
  ));
}

/** What the line above brings to this one, with its working, or what is missing for it. */
function FromAbove({ path }: { path: StoredLoadPath }) {
  if (!path.fromAbove) return null;
  const { name, words } = path.fromAbove;
  return (
    <Part title="From above" lead={`“${name}” stands on this line; its moment lifts the hold-downs here.`}>
      <ul className="bulleted">
        {words.map((word) => (
          <li key={word}>{word}</li>
        ))}
      </ul>
    </Part>
  );
}

/** What to look at next, the one that could change the answer most first; and how many of many like parts. */
function OpenNext({ path }: { path: StoredLoadPath }) {
  const { answer, sampling } = path;
  if (answer.openNext.length === 0 && sampling.length === 0 && answer.notListed.length === 0) return null;
  return (
    <Part title="Open next" lead="The link that could change the answer most comes first.">
      <ol className="numbered">
        {answer.openNext.map(({ segment, link, why }) => (
          <li key={`${segment} ${link}`}>
            <b>{link}</b>
            {answer.segments.length > 1 && `, ${segment}`}. {why}
          </li>
        ))}
      </ol>
      {answer.notListed.length > 0 && (
        <p>
          Not listed yet: <b>{usualWords(path.kind, answer.notListed).en}</b>. Add it to the links once somebody has
          looked; until then it counts as not seen.
        </p>
      )}
      {sampling.length > 0 && (
        <Facts
          facts={sampling.map(({ name, total, opened, openMore, words }) => ({
            name: `${name}: ${opened} of ${total} seen`,
            value: openMore > 0 ? `open ${openMore} more` : 'enough seen',
            note: words,
          }))}
        />
      )}
    </Part>
  );
}

export const kindOfLine = {
  'wall-line': 'Wall line',
  'gravity-line': 'Gravity line',
  'floor-line': 'Floor line',
} as const;
export const roleWord = (role: keyof typeof LINK_ROLE_WORDS): string => LINK_ROLE_WORDS[role].en;
