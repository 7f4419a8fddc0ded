import { Navigate } from '@tanstack/react-router';
import { useMe } from '../shared/api/me.ts';

/** Crew starts on the site, everyone else at the list of projects. */
export function HomeScreen() {
  const me = useMe();
  if (!me.data) return null;
  return <Navigate to={me.data.member.role === 'crew' ? '/crew' : '/projects'} replace />;
}
