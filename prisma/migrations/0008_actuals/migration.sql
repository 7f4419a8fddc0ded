-- CreateTable
CREATE TABLE "actual" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "project_id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "operation" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "quantity" DOUBLE PRECISION NOT NULL,
    "hours" DOUBLE PRECISION NOT NULL,
    "cost_cents" INTEGER NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "done_on" DATE NOT NULL,
    "entered_at" TIMESTAMPTZ(3) NOT NULL,
    "entered_by_id" UUID NOT NULL,
    "taken_back_at" TIMESTAMPTZ(3),
    "taken_back_why" TEXT,

    CONSTRAINT "actual_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateIndex
CREATE INDEX "actual_company_id_finding_id_idx" ON "actual"("company_id", "finding_id");

-- CreateIndex
CREATE INDEX "actual_company_id_operation_unit_idx" ON "actual"("company_id", "operation", "unit");

-- AddForeignKey
ALTER TABLE "actual" ADD CONSTRAINT "actual_company_id_finding_id_fkey" FOREIGN KEY ("company_id", "finding_id") REFERENCES "finding"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Fenced by its company, like every table of one. What was entered is taken back, never removed.
ALTER TABLE "actual" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "actual" FORCE ROW LEVEL SECURITY;
CREATE POLICY company_fence ON "actual" TO underlath_app USING (company_id = app_company()) WITH CHECK (company_id = app_company());
DO $$ BEGIN EXECUTE format('CREATE POLICY keeper ON "actual" TO %I USING (true) WITH CHECK (true)', current_user); END $$;
GRANT SELECT, INSERT, UPDATE ON "actual" TO underlath_app;
