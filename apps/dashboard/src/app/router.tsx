import { createRootRoute, createRoute, createRouter, lazyRouteComponent } from '@tanstack/react-router';
import { HomeScreen } from './home-screen.tsx';
import { ErrorScreen, NotFoundScreen } from './lost-screens.tsx';
import { RootScreen } from './root-screen.tsx';
import { readSearch, searchWords, word, writeSearch } from './search-words.ts';
import { SignedInOnly } from './sign-in/signed-in.tsx';

const root = createRootRoute({
  component: RootScreen,
  notFoundComponent: NotFoundScreen,
  errorComponent: ErrorScreen,
});

const signIn = createRoute({
  getParentRoute: () => root,
  path: '/sign-in',
  validateSearch: (search): { to?: string } => word(search, 'to'),
  component: lazyRouteComponent(() => import('./sign-in/sign-in-screen.tsx'), 'SignInScreen'),
});
const forgotten = createRoute({
  getParentRoute: () => root,
  path: '/forgot',
  validateSearch: (search): { email?: string } => word(search, 'email'),
  component: lazyRouteComponent(() => import('./sign-in/forgot-screen.tsx'), 'ForgotScreen'),
});
const newPassword = createRoute({
  getParentRoute: () => root,
  path: '/new-password',
  component: lazyRouteComponent(() => import('./sign-in/new-password-screen.tsx'), 'NewPasswordScreen'),
});
const confirmEmail = createRoute({
  getParentRoute: () => root,
  path: '/confirm-email',
  component: lazyRouteComponent(() => import('./sign-in/confirm-email-screen.tsx'), 'ConfirmEmailScreen'),
});
const start = createRoute({
  getParentRoute: () => root,
  path: '/start',
  component: lazyRouteComponent(() => import('./sign-in/start-screen.tsx'), 'StartScreen'),
});
const invitation = createRoute({
  getParentRoute: () => root,
  path: '/invitation',
  component: lazyRouteComponent(() => import('./sign-in/invitation-screen.tsx'), 'InvitationScreen'),
});

/** The checks are open to anyone, like the API's. */
const checks = createRoute({
  getParentRoute: () => root,
  path: '/checks',
  validateSearch: (search): { q?: string } => word(search, 'q'),
  component: lazyRouteComponent(() => import('../checks/checks-screen.tsx'), 'ChecksScreen'),
});
const check = createRoute({
  getParentRoute: () => root,
  path: '/checks/$checkId',
  validateSearch: (search): Record<string, string> => searchWords(search),
  component: lazyRouteComponent(() => import('../checks/check-screen.tsx'), 'CheckScreen'),
});

const signedIn = createRoute({ getParentRoute: () => root, id: 'in', component: SignedInOnly });
const home = createRoute({ getParentRoute: () => signedIn, path: '/', component: HomeScreen });

const crew = createRoute({
  getParentRoute: () => signedIn,
  path: '/crew',
  component: lazyRouteComponent(() => import('../crew/crew-root.tsx'), 'CrewRoot'),
});
const crewProjects = createRoute({
  getParentRoute: () => crew,
  path: '/',
  component: lazyRouteComponent(() => import('../crew/place/projects-screen.tsx'), 'CrewProjectsScreen'),
});
const crewAccount = createRoute({
  getParentRoute: () => crew,
  path: '/account',
  component: lazyRouteComponent(() => import('../crew/account-screen.tsx'), 'CrewAccountScreen'),
});
const unsent = createRoute({
  getParentRoute: () => crew,
  path: '/unsent',
  component: lazyRouteComponent(() => import('../crew/outbox/unsent-screen.tsx'), 'UnsentScreen'),
});
const crewPlaces = createRoute({
  getParentRoute: () => crew,
  path: '/$projectId',
  component: lazyRouteComponent(() => import('../crew/place/places-screen.tsx'), 'CrewPlacesScreen'),
});
const crewPlace = createRoute({
  getParentRoute: () => crew,
  path: '/$projectId/places/$locationId',
  component: lazyRouteComponent(() => import('../crew/place/place-screen.tsx'), 'CrewPlaceScreen'),
});
const crewNewFinding = createRoute({
  getParentRoute: () => crew,
  path: '/new/$draftId',
  validateSearch: (search): { step?: string; question?: string } => ({
    ...word(search, 'step'),
    ...word(search, 'question'),
  }),
  component: lazyRouteComponent(() => import('../crew/finding/new-finding-screen.tsx'), 'CrewNewFindingScreen'),
});
const crewFinding = createRoute({
  getParentRoute: () => crew,
  path: '/findings/$findingId',
  component: lazyRouteComponent(() => import('../crew/finding/finding-screen.tsx'), 'CrewFindingScreen'),
});
const measureAgain = createRoute({
  getParentRoute: () => crew,
  path: '/findings/$findingId/measure',
  validateSearch: (search): { question?: string } => word(search, 'question'),
  component: lazyRouteComponent(() => import('../crew/finding/measure-again-screen.tsx'), 'MeasureAgainScreen'),
});
const crewSteps = createRoute({
  getParentRoute: () => crew,
  path: '/$projectId/places/$locationId/steps',
  component: lazyRouteComponent(() => import('../crew/place/steps-screen.tsx'), 'CrewStepsScreen'),
});
const crewTree = crew.addChildren([
  crewProjects,
  crewSteps,
  unsent,
  crewAccount,
  crewPlaces,
  crewPlace,
  crewNewFinding,
  crewFinding,
  measureAgain,
]);

const office = createRoute({
  getParentRoute: () => signedIn,
  id: 'desk',
  component: lazyRouteComponent(() => import('../estimator/desk/desk-frame.tsx'), 'DeskFrame'),
});
const projects = createRoute({
  getParentRoute: () => office,
  path: '/projects',
  validateSearch: (search): { q?: string } => word(search, 'q'),
  component: lazyRouteComponent(() => import('../estimator/project/projects-screen.tsx'), 'ProjectsScreen'),
});
const newProject = createRoute({
  getParentRoute: () => office,
  path: '/new-project',
  component: lazyRouteComponent(() => import('../estimator/project/new-project-screen.tsx'), 'NewProjectScreen'),
});
const costBook = createRoute({
  getParentRoute: () => office,
  path: '/cost-book',
  component: lazyRouteComponent(() => import('../estimator/cost-book/cost-book-screen.tsx'), 'CostBookScreen'),
});
const people = createRoute({
  getParentRoute: () => office,
  path: '/people',
  component: lazyRouteComponent(() => import('../estimator/people/people-screen.tsx'), 'PeopleScreen'),
});
const peopleLog = createRoute({
  getParentRoute: () => office,
  path: '/people-log',
  validateSearch: (search): { what?: string } => word(search, 'what'),
  component: lazyRouteComponent(() => import('../estimator/people/people-log-screen.tsx'), 'PeopleLogScreen'),
});

const account = createRoute({
  getParentRoute: () => office,
  path: '/account',
  component: lazyRouteComponent(() => import('../estimator/people/account-screen.tsx'), 'AccountScreen'),
});

const project = createRoute({
  getParentRoute: () => office,
  path: '/projects/$projectId',
  component: lazyRouteComponent(() => import('../estimator/project/project-frame.tsx'), 'ProjectFrame'),
});
const toDo = createRoute({
  getParentRoute: () => project,
  path: '/',
  component: lazyRouteComponent(() => import('../estimator/project/to-do-screen.tsx'), 'ToDoScreen'),
});
const details = createRoute({
  getParentRoute: () => project,
  path: '/details',
  component: lazyRouteComponent(
    () => import('../estimator/project/project-details-screen.tsx'),
    'ProjectDetailsScreen',
  ),
});
const house = createRoute({
  getParentRoute: () => project,
  path: '/house',
  validateSearch: (search): { place?: string; finding?: string } => ({
    ...word(search, 'place'),
    ...word(search, 'finding'),
  }),
  component: lazyRouteComponent(() => import('../estimator/house/house-screen.tsx'), 'HouseScreen'),
});
const placeScope = createRoute({
  getParentRoute: () => project,
  path: '/places/$locationId/scope',
  component: lazyRouteComponent(() => import('../estimator/house/scope-screen.tsx'), 'ScopeScreen'),
});
const loadPaths = createRoute({
  getParentRoute: () => project,
  path: '/places/$locationId/load-paths',
  component: lazyRouteComponent(() => import('../estimator/load-path/load-paths-screen.tsx'), 'LoadPathsScreen'),
});
const findings = createRoute({
  getParentRoute: () => project,
  path: '/findings',
  validateSearch: (search): { severity?: string; state?: string; place?: string; q?: string } => ({
    ...word(search, 'severity'),
    ...word(search, 'state'),
    ...word(search, 'place'),
    ...word(search, 'q'),
  }),
  component: lazyRouteComponent(() => import('../estimator/finding/findings-screen.tsx'), 'FindingsScreen'),
});
const newFinding = createRoute({
  getParentRoute: () => project,
  path: '/findings/new',
  validateSearch: (search): { place?: string } => word(search, 'place'),
  component: lazyRouteComponent(() => import('../estimator/finding/new-finding-screen.tsx'), 'NewFindingScreen'),
});
const price = createRoute({
  getParentRoute: () => project,
  path: '/findings/$findingId/price',
  component: lazyRouteComponent(() => import('../estimator/estimate/price-screen.tsx'), 'PriceScreen'),
});
const photos = createRoute({
  getParentRoute: () => project,
  path: '/photos',
  validateSearch: (search): { place?: string; stage?: string } => ({
    ...word(search, 'place'),
    ...word(search, 'stage'),
  }),
  component: lazyRouteComponent(() => import('../estimator/photos/photos-screen.tsx'), 'PhotosScreen'),
});
const changeOrders = createRoute({
  getParentRoute: () => project,
  path: '/change-orders',
  component: lazyRouteComponent(
    () => import('../estimator/change-order/change-orders-screen.tsx'),
    'ChangeOrdersScreen',
  ),
});
const newChangeOrder = createRoute({
  getParentRoute: () => project,
  path: '/change-orders/new',
  component: lazyRouteComponent(
    () => import('../estimator/change-order/new-change-order-screen.tsx'),
    'NewChangeOrderScreen',
  ),
});
const changeOrder = createRoute({
  getParentRoute: () => project,
  path: '/change-orders/$changeOrderId',
  component: lazyRouteComponent(() => import('../estimator/change-order/change-order-screen.tsx'), 'ChangeOrderScreen'),
});
const contract = createRoute({
  getParentRoute: () => project,
  path: '/contract',
  component: lazyRouteComponent(() => import('../estimator/contract/contract-screen.tsx'), 'ContractScreen'),
});
const record = createRoute({
  getParentRoute: () => project,
  path: '/record',
  component: lazyRouteComponent(() => import('../estimator/record/record-screen.tsx'), 'RecordScreen'),
});

const projectTree = project.addChildren([
  toDo,
  details,
  house,
  placeScope,
  loadPaths,
  findings,
  newFinding,
  price,
  photos,
  changeOrders,
  newChangeOrder,
  changeOrder,
  contract,
  record,
]);
const officeTree = office.addChildren([projects, newProject, costBook, people, peopleLog, account, projectTree]);

export const router = createRouter({
  routeTree: root.addChildren([
    signIn,
    forgotten,
    newPassword,
    confirmEmail,
    start,
    invitation,
    checks,
    check,
    signedIn.addChildren([home, officeTree, crewTree]),
  ]),
  parseSearch: readSearch,
  stringifySearch: writeSearch,
  scrollRestoration: true,
  defaultPendingMs: 300,
});

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}
