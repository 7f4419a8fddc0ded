import { daysOf, type Text, text } from '@underlath/rules';
import { USUAL_CREW } from '../estimates/place-plan.ts';

export interface SuggestedDays {
  readonly days: number;
  readonly reason: Text;
}

/**
 * Working days of a change order: the steps of each place in their order, one place after the other, with the usual crew.
 * `workHours` is all the work, `spanHours` what of it comes one after the other. Waiting for inspectors comes on top.
 */
export function suggestDays(workHours: number, spanHours: number): SuggestedDays {
  const { crewSize, hoursPerDay } = USUAL_CREW;
  const days = daysOf(spanHours, hoursPerDay);
  const shown = Math.round(workHours * 10) / 10;
  return {
    days,
    reason: text(
      `We count ${shown} hours of work. With ${crewSize} people at ${hoursPerDay} hours a day, step by step, this takes ${days} working ${days === 1 ? 'day' : 'days'}.`,
      `Contamos ${shown} horas de trabajo. Con ${crewSize} personas a ${hoursPerDay} horas por día, paso a paso, toma ${days} ${days === 1 ? 'día hábil' : 'días hábiles'}.`,
    ),
  };
}
