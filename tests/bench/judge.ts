import { checks, evaluateCheck } from '@underlath/rules/all-checks';

const evidence = await Promise.all(checks.map(async (check) => ({ id: check.id, ...(await check.cases()) })));
const work = evidence.flatMap(({ id, cases }) => cases.map(({ edition, inputs }) => ({ id, edition, inputs })));

/** Judges one of the published cases of all checks in turn: its verdict and its severity. */
export function judge(index: number): string {
  const one = work[index % work.length];
  if (!one) throw new Error('There is no case to judge');
  const { verdict, severity } = evaluateCheck(one.id, one);
  return verdict + severity;
}

/** The same with every value and every sentence in both languages, as an answer carries them. */
export function judgeInWords(index: number): unknown {
  const one = work[index % work.length];
  if (!one) throw new Error('There is no case to judge');
  return evaluateCheck(one.id, one).toJSON();
}
