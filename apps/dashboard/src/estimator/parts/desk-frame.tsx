import { Link, Navigate, Outlet } from '@tanstack/react-router';
import { routes } from '@underlath/contract';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { forgetMe } from '../../shared/api/kept-me.ts';
import { useMe } from '../../shared/api/me.ts';
import { LocaleProvider } from '../../shared/i18n/locale.tsx';
import { Button } from '../../shared/ui/button.tsx';
import { FailState } from '../../shared/ui/states.tsx';
import '../desk.css';

/** The company's line above every desk screen. The desk speaks English: it is the language of the contract. */
export function DeskFrame() {
  const me = useMe();
  if (me.data?.member.role === 'crew') return <Navigate to="/" replace />;
  return (
    <LocaleProvider initial="en">
      <div className="desk">
        <CompanyLine />
        <Outlet />
      </div>
    </LocaleProvider>
  );
}

function CompanyLine() {
  const me = useMe();
  // A whole new page, so that nothing of this session stays in memory.
  const signOut = useChange(routes.signOut, {
    onDone: () => {
      forgetMe();
      location.assign('/sign-in');
    },
  });
  return (
    <header className="company-line no-print">
      <Link to="/projects" className="brand">
        Underlath
      </Link>
      <nav aria-label="Company">
        <Link to="/projects" activeOptions={{ exact: true }}>
          Projects
        </Link>
        <Link to="/checks">Checks</Link>
        <Link to="/cost-book">Cost book</Link>
        <Link to="/people">People</Link>
      </nav>
      <p className="company-who">
        <span>
          {me.data?.member.name}, <span className="soft">{me.data?.company.name}</span>
        </span>
        <Button look="quiet" busy={signOut.isPending} onClick={() => signOut.mutate({})}>
          Sign out
        </Button>
      </p>
      {signOut.error && <FailState problem={problemOf(signOut.error)} doing="Signing out" />}
    </header>
  );
}
