/** The server's time. Services take it as an argument so that tests can choose the moment. */
export interface Clock {
  now(): Date;
}

export const systemClock: Clock = { now: () => new Date() };
