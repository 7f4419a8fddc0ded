import { starterCostBook } from '@underlath/rules/pricing';
import type { FastifyInstance } from 'fastify';
import { AccountMail } from './features/accounts/account-mail.ts';
import { registerAccountsRoutes } from './features/accounts/accounts.routes.ts';
import { DevicesService } from './features/accounts/devices.service.ts';
import { Passkeys } from './features/accounts/passkeys.ts';
import { PasswordsService } from './features/accounts/passwords.service.ts';
import { ProfileService } from './features/accounts/profile.service.ts';
import { SecondStepSettingsService } from './features/accounts/second-step-settings.service.ts';
import { SecondSteps } from './features/accounts/second-steps.ts';
import { SignInService } from './features/accounts/sign-in.service.ts';
import { SignInTurns } from './features/accounts/sign-in-turns.ts';
import { registerActualsRoutes } from './features/actuals/actuals.routes.ts';
import { ActualsService } from './features/actuals/actuals.service.ts';
import { registerApprovalsRoutes } from './features/approvals/approvals.routes.ts';
import { ApprovalsService } from './features/approvals/approvals.service.ts';
import { ClientLinks } from './features/approvals/client-links.ts';
import { registerChangeOrdersRoutes } from './features/change-orders/change-orders.routes.ts';
import { ChangeOrdersService } from './features/change-orders/change-orders.service.ts';
import { OfferBuilder } from './features/change-orders/offer-builder.ts';
import { SendingService } from './features/change-orders/sending.service.ts';
import { registerChecksRoutes } from './features/checks/checks.routes.ts';
import { ChecksService } from './features/checks/checks.service.ts';
import { registerContractRoutes } from './features/contract/contract.routes.ts';
import { ContractService } from './features/contract/contract.service.ts';
import { ContractEntriesService } from './features/contract/contract-entries.service.ts';
import { registerContractEvaluationRoutes } from './features/contract/contract-evaluation.routes.ts';
import { ContractEvaluationService } from './features/contract/contract-evaluation.service.ts';
import { ContractPageService } from './features/contract/contract-page.service.ts';
import { ContractTermsService } from './features/contract/contract-terms.service.ts';
import { registerCostBooksRoutes } from './features/cost-books/cost-books.routes.ts';
import { CostBooksService } from './features/cost-books/cost-books.service.ts';
import { registerEstimateEvaluationRoutes } from './features/estimates/estimate-evaluation.routes.ts';
import { EstimateEvaluationService } from './features/estimates/estimate-evaluation.service.ts';
import { EstimateRangesService } from './features/estimates/estimate-ranges.service.ts';
import { registerEstimatesRoutes } from './features/estimates/estimates.routes.ts';
import { EstimatesService } from './features/estimates/estimates.service.ts';
import { registerFindingsRoutes } from './features/findings/findings.routes.ts';
import { FindingsService } from './features/findings/findings.service.ts';
import { JudgingService } from './features/findings/judging.service.ts';
import { registerLoadPathsRoutes } from './features/load-paths/load-paths.routes.ts';
import { LoadPathsService } from './features/load-paths/load-paths.service.ts';
import { registerLocationsRoutes } from './features/locations/locations.routes.ts';
import { LocationsService } from './features/locations/locations.service.ts';
import { LettersService } from './features/mail/letters.service.ts';
import { handleMail, MailSender } from './features/mail/mail-sender.ts';
import { registerMailsRoutes } from './features/mail/mails.routes.ts';
import { MailsService } from './features/mail/mails.service.ts';
import { ApiKeysService } from './features/members/api-keys.service.ts';
import { CompaniesService } from './features/members/companies.service.ts';
import { InvitationsService } from './features/members/invitations.service.ts';
import { JoiningService } from './features/members/joining.service.ts';
import { registerMembersRoutes } from './features/members/members.routes.ts';
import { MembersService } from './features/members/members.service.ts';
import { registerNoticesRoutes } from './features/notices/notices.routes.ts';
import { NoticesService } from './features/notices/notices.service.ts';
import { registerPeopleLogRoutes } from './features/people-log/people-log.routes.ts';
import { PeopleLogService } from './features/people-log/people-log.service.ts';
import { RefusedSignIns } from './features/people-log/refused-sign-ins.service.ts';
import { PhotoDerivativesService } from './features/photos/photo-derivatives.service.ts';
import { PhotoIntakeService } from './features/photos/photo-intake.service.ts';
import { derivePhotoJob, handleDerivePhoto } from './features/photos/photos.jobs.ts';
import { registerPhotosRoutes } from './features/photos/photos.routes.ts';
import { PhotosService } from './features/photos/photos.service.ts';
import { registerProjectsRoutes } from './features/projects/projects.routes.ts';
import { ProjectsService } from './features/projects/projects.service.ts';
import { handleKeepHead, keepHeadJob, RecordWitnesses } from './features/records/record-witnesses.ts';
import { registerRecordsRoutes } from './features/records/records.routes.ts';
import { RecordsService } from './features/records/records.service.ts';
import { registerReportsRoutes } from './features/reports/reports.routes.ts';
import { ReportsService } from './features/reports/reports.service.ts';
import { registerScopesRoutes } from './features/scopes/scopes.routes.ts';
import { ScopesService } from './features/scopes/scopes.service.ts';
import { sendMailJob } from './platform/mail/outbox.ts';
import type { Platform } from './platform/platform.ts';
import type { Job, JobHandler } from './platform/queue.ts';
import { type Cookies, createCookies } from './plugins/cookies.ts';
import type { PrincipalLookups } from './shared/principals.ts';

/** What a feature brings to the house. */
export interface Feature {
  readonly name: string;
  register(app: FastifyInstance): void;
}

export interface Deps {
  readonly version: string;
  readonly features: readonly Feature[];
  readonly handlers: readonly JobHandler[];
  readonly lookups: PrincipalLookups;
  readonly cookies: Cookies;
  /** The services themselves, for commands that work without HTTP, such as the demo. */
  readonly services: Services;
}

/** Every job of every feature. The queue refuses to work while one of them has no handler, or two. */
export const jobs: readonly Job[] = [sendMailJob as Job, derivePhotoJob as Job, keepHeadJob as Job];

/** Builds every service once, from at most six things each; the server and the worker share them. */
export function createDeps(platform: Platform): Deps {
  const { config } = platform;
  const cookies = createCookies(config.publicUrl, platform.sealing);
  const services = createServices(platform);
  return {
    version: '0.1.0',
    features: listFeatures(services, cookies),
    handlers: [
      handleMail(services.mailSender),
      handleDerivePhoto(services.derivatives),
      handleKeepHead(services.witnesses),
    ],
    lookups: {
      apiKey: (tokenHash) => services.apiKeys.principal(tokenHash),
      client: (tokenHash, letterId) => services.links.principal(tokenHash, letterId),
    },
    cookies,
    services,
  };
}

type Services = ReturnType<typeof createServices>;

function createAccountServices(
  { config, database, clock, accounts, outbox, sealing }: Platform,
  members: MembersService,
  peopleLog: PeopleLogService,
  refused: RefusedSignIns,
) {
  const delivery = config.smtpUrl ? 'mailed' : 'filed';
  const mail = new AccountMail(outbox, clock, peopleLog, config.publicUrl, delivery);
  const passkeys = new Passkeys(config.publicUrl);
  const steps = new SecondSteps(clock, sealing, passkeys, mail);
  const turns = new SignInTurns(clock);
  return {
    signIn: new SignInService(database, accounts, clock, members, { turns, steps, passkeys, mail, refused }),
    passwords: new PasswordsService(database, clock, mail),
    profile: new ProfileService(database, clock, mail),
    secondStep: new SecondStepSettingsService(database, clock, mail, { sealing, steps, passkeys }),
    devices: new DevicesService(database, mail),
  };
}

function createServices(platform: Platform) {
  const { config, database, clock, accounts, outbox, mailer, fileStore, queue, ranges } = platform;
  const peopleLog = new PeopleLogService(database, clock);
  const refused = new RefusedSignIns(database, peopleLog);
  const members = new MembersService(database, accounts, clock, peopleLog);
  const companies = new CompaniesService(database, accounts, config.signUp, {
    members,
    peopleLog,
    refused,
    starterBook: starterCostBook,
  });
  const invitations = new InvitationsService(database, outbox, clock, peopleLog, config.publicUrl);
  const joining = new JoiningService(database, accounts, clock, members, peopleLog, refused);
  const apiKeys = new ApiKeysService(database, clock, peopleLog);
  const witnesses = new RecordWitnesses(fileStore, queue);
  const records = new RecordsService(database, clock, witnesses);
  const contract = new ContractService();
  const contractTerms = new ContractTermsService(database, clock, records);
  const contractEntries = new ContractEntriesService(database, clock, records, contract);
  const notices = new NoticesService(database, clock, records, outbox);
  const projects = new ProjectsService(database, records, contract, notices, contractTerms);
  const locations = new LocationsService(database, records);
  const photos = new PhotosService(database, fileStore, records);
  const intake = new PhotoIntakeService(database, fileStore, queue, records);
  const derivatives = new PhotoDerivativesService(database, fileStore, queue, records);
  const checks = new ChecksService();
  const loadPaths = new LoadPathsService(database, clock, records);
  const judging = new JudgingService(clock, checks, records);
  const findings = new FindingsService(database, clock, records, photos, judging);
  const books = new CostBooksService(database, clock, records, peopleLog);
  const scopes = new ScopesService(database, books, starterCostBook);
  const estimates = new EstimatesService(database, records, books);
  const evaluation = new EstimateEvaluationService(ranges);
  const estimateRanges = new EstimateRangesService(database, books, ranges);
  const actuals = new ActualsService(database, clock, records, estimates, books);
  const offers = new OfferBuilder(contract, books);
  const letters = new LettersService(clock, records, outbox, config.publicUrl);
  const changeOrders = new ChangeOrdersService(database, clock, records, offers, letters);
  const contractPage = new ContractPageService(database, contract, changeOrders);
  const sending = new SendingService(database, clock, records, letters, changeOrders, config.publicUrl);
  const mails = new MailsService(database, clock, records, outbox, sending);
  const links = new ClientLinks(database, clock);
  const approvals = new ApprovalsService(database, clock, records, letters, contract);
  const reports = new ReportsService(database, photos);
  const mailSender = new MailSender(database, clock, records, mailer, reports);
  return {
    ...createAccountServices(platform, members, peopleLog, refused),
    companies,
    refused,
    peopleLog,
    members,
    invitations,
    joining,
    apiKeys,
    records,
    witnesses,
    contractTerms,
    contractEntries,
    contractPage,
    notices,
    projects,
    locations,
    photos,
    intake,
    derivatives,
    checks,
    scopes,
    loadPaths,
    findings,
    books,
    estimates,
    estimateRanges,
    actuals,
    evaluation,
    changeOrders,
    sending,
    mails,
    mailSender,
    links,
    approvals,
    reports,
  };
}

function listFeatures(services: Services, cookies: Cookies): Feature[] {
  return [
    { name: 'accounts', register: (app) => registerAccountsRoutes(app, { ...services, cookies }) },
    { name: 'members', register: (app) => registerMembersRoutes(app, { ...services, cookies }) },
    { name: 'people-log', register: (app) => registerPeopleLogRoutes(app, services.peopleLog) },
    { name: 'projects', register: (app) => registerProjectsRoutes(app, services.projects) },
    { name: 'locations', register: (app) => registerLocationsRoutes(app, services.locations) },
    { name: 'photos', register: (app) => registerPhotosRoutes(app, services) },
    { name: 'checks', register: (app) => registerChecksRoutes(app, services.checks) },
    { name: 'load-paths', register: (app) => registerLoadPathsRoutes(app, services.loadPaths) },
    { name: 'scopes', register: (app) => registerScopesRoutes(app, services.scopes) },
    { name: 'findings', register: (app) => registerFindingsRoutes(app, services.findings) },
    { name: 'notices', register: (app) => registerNoticesRoutes(app, services.notices) },
    { name: 'records', register: (app) => registerRecordsRoutes(app, services.records) },
    { name: 'contract', register: (app) => registerContractRoutes(app, services) },
    { name: 'cost-books', register: (app) => registerCostBooksRoutes(app, services.books) },
    { name: 'estimates', register: (app) => registerEstimatesRoutes(app, services.estimates, services.estimateRanges) },
    {
      name: 'evaluation',
      register: (app) => {
        registerEstimateEvaluationRoutes(app, services.evaluation);
        registerContractEvaluationRoutes(app, new ContractEvaluationService());
      },
    },
    { name: 'actuals', register: (app) => registerActualsRoutes(app, services.actuals) },
    {
      name: 'change-orders',
      register: (app) => registerChangeOrdersRoutes(app, services.changeOrders, services.sending),
    },
    { name: 'mail', register: (app) => registerMailsRoutes(app, services.mails) },
    { name: 'approvals', register: (app) => registerApprovalsRoutes(app, { ...services, cookies }) },
    { name: 'reports', register: (app) => registerReportsRoutes(app, services.reports) },
  ];
}
