/** Photos of these stages are of work that has begun. */
export const workStages = ['during', 'repaired', 'beforeCover'] as const;

export const isWork = (stage: string): boolean => workStages.some((one) => one === stage);
