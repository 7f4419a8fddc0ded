import type { Project } from '@underlath/contract';

/** The code and the standards a project is judged under, the code first. */
export const editionsOf = (project: Project | undefined): readonly string[] =>
  project ? [project.codeEdition, ...project.standardEditions] : [];
