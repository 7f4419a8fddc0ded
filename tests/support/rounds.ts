/** How often a race is run: few times in the gate, many in the long run (`npm run test:long`). */
export const rounds = ({ gate, long }: { gate: number; long: number }): number =>
  process.env.ROUNDS === 'long' ? long : gate;
