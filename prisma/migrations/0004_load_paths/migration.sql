-- CreateEnum
CREATE TYPE "load_path_kind" AS ENUM ('wall-line', 'gravity-line', 'floor-line');

-- CreateTable
CREATE TABLE "load_path" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "project_id" UUID NOT NULL,
    "location_id" UUID NOT NULL,
    "kind" "load_path_kind" NOT NULL,
    "name" TEXT NOT NULL,
    "stories_above" INTEGER,
    "story_share" DOUBLE PRECISION,
    "shored" BOOLEAN NOT NULL DEFAULT false,
    "demand_lb" DOUBLE PRECISION,
    "capacities_from" TEXT NOT NULL DEFAULT '',
    "segments" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "changed_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "load_path_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateIndex
CREATE INDEX "load_path_company_id_location_id_idx" ON "load_path"("company_id", "location_id");

-- AddForeignKey
ALTER TABLE "load_path" ADD CONSTRAINT "load_path_company_id_location_id_fkey" FOREIGN KEY ("company_id", "location_id") REFERENCES "location"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Fenced by its company, like every table of one.
ALTER TABLE "load_path" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "load_path" FORCE ROW LEVEL SECURITY;
CREATE POLICY company_fence ON "load_path" TO underlath_app USING (company_id = app_company()) WITH CHECK (company_id = app_company());
DO $$ BEGIN EXECUTE format('CREATE POLICY keeper ON "load_path" TO %I USING (true) WITH CHECK (true)', current_user); END $$;
GRANT SELECT, INSERT, UPDATE, DELETE ON "load_path" TO underlath_app;
