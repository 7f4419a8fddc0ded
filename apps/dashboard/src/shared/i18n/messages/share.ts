import { defineMessages } from '../define.ts';

/** What is said of a link to a check that can't be used as a whole. */
export const shareWords = defineMessages(
  {
    noInput: '“{name}” with “{typed}”: this check does not ask for it.',
    noEdition: 'Edition “{typed}”: this check knows {allowed}.',
    noContext: '“{name}” with “{typed}”: not something that stands around a finding.',
  },
  {
    noInput: '«{name}» con «{typed}»: esta revisión no lo pide.',
    noEdition: 'Edición «{typed}»: esta revisión conoce {allowed}.',
    noContext: '«{name}» con «{typed}»: no es algo que rodee un hallazgo.',
  },
);
