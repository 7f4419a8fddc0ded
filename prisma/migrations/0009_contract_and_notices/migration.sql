-- CreateEnum
CREATE TYPE "contract_entry_kind" AS ENUM ('payment', 'completed', 'allowance');

-- AlterTable
ALTER TABLE "project" ADD COLUMN     "site_state" TEXT;

-- CreateTable
CREATE TABLE "contract_terms" (
    "company_id" UUID NOT NULL,
    "project_id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "retainage_pct" DOUBLE PRECISION NOT NULL DEFAULT 0,
    "net_decrease_returns" BOOLEAN NOT NULL DEFAULT false,
    "day_kind" TEXT NOT NULL DEFAULT 'working',
    "days_off" DATE[] DEFAULT ARRAY[]::DATE[],
    "notice_days" INTEGER,
    "notice_day_kind" TEXT NOT NULL DEFAULT 'calendar',
    "notice_methods" TEXT[] DEFAULT ARRAY[]::TEXT[],
    "milestones" JSONB NOT NULL DEFAULT '[]',
    "changed_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "contract_terms_pkey" PRIMARY KEY ("company_id","project_id")
);

-- CreateTable
CREATE TABLE "contract_entry" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "project_id" UUID NOT NULL,
    "kind" "contract_entry_kind" NOT NULL,
    "name" TEXT NOT NULL,
    "happened_on" DATE NOT NULL,
    "cents" INTEGER,
    "allowed_cents" INTEGER,
    "spent_cents" INTEGER,
    "overhead_profit_pct" DOUBLE PRECISION,
    "milestone_id" UUID,
    "entered_at" TIMESTAMPTZ(3) NOT NULL,
    "entered_by_id" UUID NOT NULL,
    "taken_back_at" TIMESTAMPTZ(3),
    "taken_back_why" TEXT,

    CONSTRAINT "contract_entry_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "notice" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "project_id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "method" TEXT NOT NULL,
    "sent_on" DATE NOT NULL,
    "sent_to" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "mail_id" UUID,
    "entered_at" TIMESTAMPTZ(3) NOT NULL,
    "entered_by_id" UUID NOT NULL,

    CONSTRAINT "notice_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateIndex
CREATE INDEX "contract_entry_company_id_project_id_happened_on_idx" ON "contract_entry"("company_id", "project_id", "happened_on");

-- CreateIndex
CREATE INDEX "notice_company_id_finding_id_idx" ON "notice"("company_id", "finding_id");

-- CreateIndex
CREATE INDEX "notice_company_id_project_id_idx" ON "notice"("company_id", "project_id");

-- AddForeignKey
ALTER TABLE "contract_terms" ADD CONSTRAINT "contract_terms_company_id_project_id_fkey" FOREIGN KEY ("company_id", "project_id") REFERENCES "project"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "contract_entry" ADD CONSTRAINT "contract_entry_company_id_project_id_fkey" FOREIGN KEY ("company_id", "project_id") REFERENCES "project"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notice" ADD CONSTRAINT "notice_company_id_project_id_fkey" FOREIGN KEY ("company_id", "project_id") REFERENCES "project"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notice" ADD CONSTRAINT "notice_company_id_finding_id_fkey" FOREIGN KEY ("company_id", "finding_id") REFERENCES "finding"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Fenced by their company, like every table of one. Terms change; an entry is taken back, never removed; a notice went out as it is.
DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['contract_terms', 'contract_entry', 'notice'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY company_fence ON %I TO underlath_app USING (company_id = app_company()) WITH CHECK (company_id = app_company())', t);
    EXECUTE format('CREATE POLICY keeper ON %I TO %I USING (true) WITH CHECK (true)', t, current_user);
  END LOOP;
END $$;
GRANT SELECT, INSERT, UPDATE ON "contract_terms", "contract_entry" TO underlath_app;
GRANT SELECT, INSERT ON "notice" TO underlath_app;
CREATE TRIGGER written_once BEFORE UPDATE OR DELETE ON "notice" FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER never_emptied BEFORE TRUNCATE ON "notice" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
