/** The date of a day as it is stored, `YYYY-MM-DD`: at midnight UTC, whatever the zone of who reads it. */
export const dayOf = (date: Date): string => date.toISOString().slice(0, 10);
