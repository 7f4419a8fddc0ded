import { routes } from '@underlath/contract';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { Page } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { ProjectForm } from './project-form.tsx';
import { useProjectId } from './project-frame.tsx';

/** Everything a project was created with, to be looked up and changed. */
export function ProjectDetailsScreen() {
  const projectId = useProjectId();
  const project = useRoute(routes.getProject, { params: { projectId } });
  const announce = useAnnounce();
  const change = useChange(routes.changeProject, {
    invalidates: [
      routes.getProject,
      routes.projectOverview,
      routes.listProjects,
      routes.getContract,
      routes.getContractLedger,
    ],
    onDone: () => announce('Saved'),
  });
  return (
    <Page
      title="Project details"
      of={project.data?.name}
      lead="What was sent to the client keeps the details it was sent with."
    >
      <Reading query={project} doing="Reading the project" rows={8}>
        {(data) => (
          <ProjectForm
            project={data}
            busy={change.isPending}
            problem={change.error ? problemOf(change.error) : null}
            doing="Saving the project"
            submitLabel="Save"
            onSubmit={(_all, body) => change.mutate({ params: { projectId }, body, ifMatch: data.version })}
          />
        )}
      </Reading>
    </Page>
  );
}
