import type { ContractTerms } from '@underlath/contract';

type NoticeMethod = ContractTerms['noticeMethods'][number];

const words: Record<NoticeMethod, string> = {
  'in-person': 'In person',
  letter: 'Letter',
  'certified-mail': 'Certified mail',
  'e-mail': 'E-mail',
  app: 'The client’s page here',
};

export const noticeMethodWord = (method: NoticeMethod): string => words[method];
export const noticeMethodOptions = (Object.keys(words) as NoticeMethod[]).map((value) => ({
  value,
  label: words[value],
}));
