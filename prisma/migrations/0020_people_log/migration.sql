-- Who signed in, who may do what, and who changed that: a log beside the records of the jobs, for the owner to read.

-- CreateTable
CREATE TABLE "people_event" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "type" TEXT NOT NULL,
    "actor_kind" TEXT NOT NULL,
    "actor_id" TEXT NOT NULL,
    "actor_name" TEXT NOT NULL,
    "subject_id" UUID,
    "data" JSONB NOT NULL,

    CONSTRAINT "people_event_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateIndex
CREATE INDEX "people_event_company_id_at_id_idx" ON "people_event"("company_id", "at" DESC, "id" DESC);

-- CreateIndex
CREATE INDEX "people_event_company_id_type_at_id_idx" ON "people_event"("company_id", "type", "at" DESC, "id" DESC);

-- Fenced by its company, and only ever added to.
ALTER TABLE "people_event" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "people_event" FORCE ROW LEVEL SECURITY;
CREATE POLICY company_fence ON "people_event" TO underlath_app USING (company_id = app_company()) WITH CHECK (company_id = app_company());
DO $$ BEGIN EXECUTE format('CREATE POLICY keeper ON "people_event" TO %I USING (true) WITH CHECK (true)', current_user); END $$;
GRANT SELECT, INSERT ON "people_event" TO underlath_app;
CREATE TRIGGER written_once BEFORE UPDATE OR DELETE ON "people_event" FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER never_emptied BEFORE TRUNCATE ON "people_event" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
