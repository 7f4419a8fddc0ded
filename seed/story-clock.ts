import type { Clock } from '../apps/api/src/platform/clock.ts';
import type { When } from './story.ts';

/** The phones of the stories are set to a zone five hours behind UTC; the stories' days are days there, whatever the hour. */
const phoneOffset = '-05:00';
const phoneOffsetMs = -5 * 3_600_000;
const dayMs = 86_400_000;

/** The services' clock while the stories are told: it shows the moment that is being told of, so that records carry its date. */
export class StoryClock implements Clock {
  private shown: Date;

  constructor(private readonly today: Date) {
    this.shown = today;
  }

  now(): Date {
    return this.shown;
  }

  /** Goes to a moment of the story. */
  show(when: When): void {
    this.shown = new Date(this.stampOf(when));
  }

  /** A day at the house, `YYYY-MM-DD`. */
  dayOf(daysAgo: number): string {
    return new Date(this.today.getTime() + phoneOffsetMs - daysAgo * dayMs).toISOString().slice(0, 10);
  }

  /** Local time with its offset, as a camera writes it. */
  stampOf({ daysAgo, time }: When): string {
    return `${this.dayOf(daysAgo)}T${time}${phoneOffset}`;
  }
}
