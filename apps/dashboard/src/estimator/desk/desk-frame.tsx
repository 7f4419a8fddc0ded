import { Link, Navigate, Outlet } from '@tanstack/react-router';
import { SignOut } from '../../shared/account/sign-out.tsx';
import { useMe } from '../../shared/api/me.ts';
import { LocaleProvider } from '../../shared/i18n/locale.tsx';
import './desk.css';

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
      <div className="company-who">
        <span>
          <Link to="/account">{me.data?.member.name}</Link>, <span className="soft">{me.data?.company.name}</span>
        </span>
        <SignOut />
      </div>
    </header>
  );
}
