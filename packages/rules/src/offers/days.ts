import { calendarDaysOf } from '../kernel/dates.ts';
import { type Text, text } from '../kernel/index.ts';
import type { Crew } from '../pricing/book/cost-book.ts';
import { daysOf } from '../repairs/schedule.ts';

/** What the days of a group are worked out from. */
export interface WorkTime {
  /** Hours from the first step to the last, place after place. */
  readonly spanHours: number;
  readonly crew: Crew;
  /** How the contract counts days. */
  readonly dayKind: 'working' | 'calendar';
}

export interface SuggestedDays {
  /** As the contract counts them. */
  readonly days: number;
  readonly reason: Text;
}

/**
 * Days of a change order: the steps of each place in their order, one place after the other, with the crew of the cost
 * book. `workHours` is all the work. Waiting for inspectors comes on top.
 */
export function suggestDays(workHours: number, { spanHours, crew, dayKind }: WorkTime): SuggestedDays {
  const { crewSize, hoursPerDay } = crew;
  const working = daysOf(spanHours, hoursPerDay);
  const days = dayKind === 'calendar' ? calendarDaysOf(working) : working;
  const shown = Math.round(workHours * 10) / 10;
  const reason = text(
    `The work takes ${counted(working, 'working day', 'working days')}: ${counted(shown, 'hour', 'hours')} in all, for ${counted(crewSize, 'person', 'people')} at ${hoursPerDay} hours a day, one step after the other.`,
    `El trabajo toma ${counted(working, 'día hábil', 'días hábiles')}: ${counted(shown, 'hora', 'horas')} en total, para ${counted(crewSize, 'persona', 'personas')} a ${hoursPerDay} horas por día, un paso tras otro.`,
  );
  if (dayKind === 'working') return { days, reason };
  return {
    days,
    reason: text(
      `${reason.en} With weekends this is ${counted(days, 'day', 'days')} of the calendar.`,
      `${reason.es} Con los fines de semana son ${counted(days, 'día', 'días')} de calendario.`,
    ),
  };
}

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
