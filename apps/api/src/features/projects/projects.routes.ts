import { projectRoutes, seesMoney } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import { callerOf } from '../../shared/caller.ts';
import type { ProjectsService } from './projects.service.ts';

export function registerProjectsRoutes(app: FastifyInstance, service: ProjectsService): void {
  serve(app, projectRoutes.listProjects, ({ query, principal }) => service.list(principal.companyId, query));

  serve(app, projectRoutes.createProject, ({ body, principal }) => service.create(callerOf(principal), body));

  serve(app, projectRoutes.getProject, ({ params, principal }) => service.get(principal.companyId, params.projectId));

  serve(app, projectRoutes.changeProject, ({ params, body, principal, ifMatch }) =>
    service.change(callerOf(principal), params.projectId, ifMatch, body),
  );

  serve(app, projectRoutes.projectOverview, ({ params, principal }) =>
    service.overview(principal.companyId, params.projectId, seesMoney(principal)),
  );
}
