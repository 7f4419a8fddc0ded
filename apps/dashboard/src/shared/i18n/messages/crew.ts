import { defineMessages } from '../define.ts';

/** The crew's phone. */
export const crew = defineMessages({ myProjects: 'My projects' }, { myProjects: 'Mis proyectos' });
