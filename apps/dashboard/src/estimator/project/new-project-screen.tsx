import { Link, useNavigate } from '@tanstack/react-router';
import { routes } from '@underlath/contract';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { buttonClass } from '../../shared/ui/button.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { Page } from '../desk/page.tsx';
import { ProjectForm } from './project-form.tsx';

export function NewProjectScreen() {
  const navigate = useNavigate();
  const announce = useAnnounce();
  const create = useChange(routes.createProject, {
    invalidates: [routes.listProjects],
    onDone: (project) => {
      announce(`${project.name} is there. Add its places next.`);
      navigate({ to: '/projects/$projectId/house', params: { projectId: project.id }, search: {} });
    },
  });
  return (
    <Page title="New project">
      <ProjectForm
        project={null}
        busy={create.isPending}
        problem={create.error ? problemOf(create.error) : null}
        doing="Creating the project"
        submitLabel="Create the project"
        onSubmit={(body) => create.mutate({ body })}
      >
        <Link to="/projects" className={buttonClass('quiet')}>
          Back to the projects
        </Link>
      </ProjectForm>
    </Page>
  );
}
