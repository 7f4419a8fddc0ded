import type { NoticeClock } from '@underlath/contract';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { type TrackPoint, trackOf } from './track.ts';
import './notice.css';

const words: Record<TrackPoint['kind'], string> = {
  seen: 'First seen',
  sent: 'Notice sent',
  today: 'Today',
  due: 'Last day',
};

const percent = (share: number) => `${Math.round(share * 1000) / 10}%`;

/** The days of a notice as a dimension line: what has passed is drawn thick. The words under it say the same. */
export function NoticeTimeline({ clock }: { clock: NoticeClock }) {
  const points = trackOf(clock);
  const today = points.find(({ kind }) => kind === 'today')?.at ?? 0;
  return (
    <div className="notice-time">
      <div className="notice-track" aria-hidden="true">
        <span className="notice-passed" style={{ width: percent(today) }} />
        {points.map(({ kind, at }) => (
          <span key={kind} className={`notice-tick notice-tick-${kind}`} style={{ left: percent(at) }} />
        ))}
      </div>
      <ol className="notice-days">
        {points.map(({ kind, day }) => (
          <li key={kind}>
            <span className={`notice-key notice-key-${kind}`} aria-hidden="true" />
            <span className="soft">{words[kind]}</span> <Stamp at={day} />
          </li>
        ))}
      </ol>
    </div>
  );
}
