import { type Text, text } from '@underlath/rules';

/** Assumed until the company says otherwise: two people, eight hours a day (common practice, no source). */
const crewSize = 2;
const hoursPerDay = 8;

export interface SuggestedDays {
  readonly days: number;
  readonly reason: Text;
}

/** Whole working days for these crew hours (0 or more), with the reason in words. */
export function suggestDays(hours: number): SuggestedDays {
  const days = Math.ceil(hours / (crewSize * hoursPerDay));
  const shown = Math.round(hours * 10) / 10;
  return {
    days,
    reason: text(
      `We count ${shown} hours of work. With ${crewSize} people at ${hoursPerDay} hours a day this takes ${days} working ${days === 1 ? 'day' : 'days'}.`,
      `Contamos ${shown} horas de trabajo. Con ${crewSize} personas a ${hoursPerDay} horas por día toma ${days} ${days === 1 ? 'día hábil' : 'días hábiles'}.`,
    ),
  };
}
