-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "public";

-- CreateEnum
CREATE TYPE "role" AS ENUM ('owner', 'estimator', 'crew');

-- CreateEnum
CREATE TYPE "location_kind" AS ENUM ('story', 'room', 'wall', 'floor', 'roof', 'beam-line');

-- CreateEnum
CREATE TYPE "derivative_state" AS ENUM ('waiting', 'ready', 'failed');

-- CreateEnum
CREATE TYPE "photo_stage" AS ENUM ('found', 'opened', 'during', 'repaired', 'before-cover');

-- CreateEnum
CREATE TYPE "finding_state" AS ENUM ('noted', 'judged', 'priced', 'offered', 'approved', 'declined', 'repaired', 'proven', 'withdrawn');

-- CreateEnum
CREATE TYPE "verdict" AS ENUM ('meets', 'fails', 'undetermined', 'not-applicable');

-- CreateEnum
CREATE TYPE "severity" AS ENUM ('make-safe', 'engineer', 'repair', 'record');

-- CreateEnum
CREATE TYPE "change_order_state" AS ENUM ('draft', 'sent', 'approved', 'part-approved', 'declined', 'replaced');

-- CreateEnum
CREATE TYPE "decision_kind" AS ENUM ('approved', 'declined');

-- CreateEnum
CREATE TYPE "mail_state" AS ENUM ('waiting', 'sent', 'failed');

-- CreateTable
CREATE TABLE "app_user" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "email_verified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "app_user_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "session" (
    "id" UUID NOT NULL,
    "token" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "ip_address" TEXT,
    "user_agent" TEXT,
    "user_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "account" (
    "id" UUID NOT NULL,
    "account_id" TEXT NOT NULL,
    "provider_id" TEXT NOT NULL,
    "user_id" UUID NOT NULL,
    "access_token" TEXT,
    "refresh_token" TEXT,
    "id_token" TEXT,
    "access_token_expires_at" TIMESTAMPTZ(3),
    "refresh_token_expires_at" TIMESTAMPTZ(3),
    "scope" TEXT,
    "password" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "account_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "verification" (
    "id" UUID NOT NULL,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "verification_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "company" (
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "name" TEXT NOT NULL,
    "license_number" TEXT,
    "phone" TEXT,
    "email" TEXT,
    "address" TEXT,
    "state" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "company_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "member" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "user_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "role" "role" NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "removed_at" TIMESTAMPTZ(3),

    CONSTRAINT "member_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "invitation" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "email" TEXT NOT NULL,
    "role" "role" NOT NULL,
    "token_hash" TEXT NOT NULL,
    "invited_by_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "accepted_at" TIMESTAMPTZ(3),
    "revoked_at" TIMESTAMPTZ(3),

    CONSTRAINT "invitation_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "api_key" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "role" "role" NOT NULL,
    "prefix" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "created_by_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "revoked_at" TIMESTAMPTZ(3),

    CONSTRAINT "api_key_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "project" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "name" TEXT NOT NULL,
    "site_address" TEXT NOT NULL,
    "client_name" TEXT NOT NULL,
    "client_email" TEXT,
    "client_locale" TEXT NOT NULL DEFAULT 'en',
    "year_built" INTEGER,
    "stories" INTEGER NOT NULL,
    "original_sum_cents" INTEGER NOT NULL,
    "original_days" INTEGER NOT NULL,
    "start_on" DATE,
    "code_edition" TEXT NOT NULL,
    "jurisdiction" TEXT NOT NULL,
    "contingency_cents" INTEGER NOT NULL DEFAULT 0,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "project_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "location" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "project_id" UUID NOT NULL,
    "parent_id" UUID,
    "kind" "location_kind" NOT NULL,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL DEFAULT 0,
    "width_in" DOUBLE PRECISION,
    "height_in" DOUBLE PRECISION,
    "framing_spacing_in" DOUBLE PRECISION,
    "member_depth_in" DOUBLE PRECISION,
    "stories_above" INTEGER NOT NULL DEFAULT 0,
    "openings" JSONB NOT NULL DEFAULT '[]',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "location_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "photo" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "project_id" UUID NOT NULL,
    "location_id" UUID,
    "stage" "photo_stage" NOT NULL DEFAULT 'found',
    "caption" TEXT NOT NULL DEFAULT '',
    "sha256" TEXT NOT NULL,
    "byte_count" INTEGER NOT NULL,
    "media_type" TEXT NOT NULL,
    "width_px" INTEGER NOT NULL,
    "height_px" INTEGER NOT NULL,
    "file_key" TEXT NOT NULL,
    "device_time" TEXT,
    "device_offset" TEXT,
    "received_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "uploaded_by_id" UUID NOT NULL,
    "derivative_state" "derivative_state" NOT NULL DEFAULT 'waiting',
    "derivative_reason" TEXT,
    "view_sha256" TEXT,

    CONSTRAINT "photo_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "finding" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "project_id" UUID NOT NULL,
    "location_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "check_id" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "state" "finding_state" NOT NULL DEFAULT 'noted',
    "state_reason" TEXT,
    "extent" JSONB,
    "context" JSONB NOT NULL DEFAULT '{}',
    "verdict" "verdict",
    "severity" "severity",
    "seen_at" TIMESTAMPTZ(3) NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by_id" UUID NOT NULL,
    "estimate" JSONB,

    CONSTRAINT "finding_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "finding_photo" (
    "company_id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "photo_id" UUID NOT NULL,
    "added_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "finding_photo_pkey" PRIMARY KEY ("company_id","finding_id","photo_id")
);

-- CreateTable
CREATE TABLE "judgment" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "seq" INTEGER NOT NULL,
    "check_id" TEXT NOT NULL,
    "rules_version" TEXT NOT NULL,
    "edition" TEXT NOT NULL,
    "inputs" JSONB NOT NULL,
    "context" JSONB NOT NULL,
    "outcome" JSONB NOT NULL,
    "verdict" "verdict" NOT NULL,
    "severity" "severity" NOT NULL,
    "judged_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "judged_by_id" UUID NOT NULL,

    CONSTRAINT "judgment_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "cost_book" (
    "company_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "book" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by_id" UUID,

    CONSTRAINT "cost_book_pkey" PRIMARY KEY ("company_id","version")
);

-- CreateTable
CREATE TABLE "change_order" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "project_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "state" "change_order_state" NOT NULL DEFAULT 'draft',
    "wording" JSONB NOT NULL,
    "days" INTEGER NOT NULL DEFAULT 0,
    "sent_version" INTEGER,
    "total_cents" INTEGER NOT NULL DEFAULT 0,
    "decided_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by_id" UUID NOT NULL,

    CONSTRAINT "change_order_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "change_order_finding" (
    "company_id" UUID NOT NULL,
    "change_order_id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "position" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "change_order_finding_pkey" PRIMARY KEY ("company_id","change_order_id","finding_id")
);

-- CreateTable
CREATE TABLE "change_order_version" (
    "company_id" UUID NOT NULL,
    "change_order_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "document" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "sent_at" TIMESTAMPTZ(3) NOT NULL,
    "sent_by_id" UUID NOT NULL,

    CONSTRAINT "change_order_version_pkey" PRIMARY KEY ("company_id","change_order_id","version")
);

-- CreateTable
CREATE TABLE "client_link" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "change_order_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "token_hash" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "revoked_at" TIMESTAMPTZ(3),

    CONSTRAINT "client_link_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "decision" (
    "company_id" UUID NOT NULL,
    "change_order_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "id" UUID NOT NULL,
    "kind" "decision_kind" NOT NULL,
    "signer_name" TEXT NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "sha256" TEXT NOT NULL,
    "consent_id" TEXT NOT NULL,
    "consent_text" TEXT NOT NULL,
    "locale" TEXT NOT NULL,
    "link_id" UUID NOT NULL,
    "user_agent" TEXT NOT NULL DEFAULT '',
    "decided_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "decision_pkey" PRIMARY KEY ("company_id","change_order_id","version")
);

-- CreateTable
CREATE TABLE "question" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "change_order_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "asked_at" TIMESTAMPTZ(3) NOT NULL,
    "answer" TEXT,
    "answered_at" TIMESTAMPTZ(3),
    "answered_by_id" UUID,

    CONSTRAINT "question_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "event" (
    "company_id" UUID NOT NULL,
    "project_id" UUID NOT NULL,
    "seq" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "type" TEXT NOT NULL,
    "subject_id" UUID NOT NULL,
    "body" TEXT NOT NULL,
    "prev_hash" TEXT NOT NULL,
    "hash" TEXT NOT NULL,

    CONSTRAINT "event_pkey" PRIMARY KEY ("company_id","project_id","seq")
);

-- CreateTable
CREATE TABLE "record_head" (
    "company_id" UUID NOT NULL,
    "project_id" UUID NOT NULL,
    "seq" INTEGER NOT NULL DEFAULT 0,
    "hash" TEXT NOT NULL,

    CONSTRAINT "record_head_pkey" PRIMARY KEY ("company_id","project_id")
);

-- CreateTable
CREATE TABLE "mail" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "to" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "state" "mail_state" NOT NULL DEFAULT 'waiting',
    "failure" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "sent_at" TIMESTAMPTZ(3),

    CONSTRAINT "mail_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "idempotency_key" (
    "principal" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "fingerprint" TEXT NOT NULL,
    "status" INTEGER,
    "body" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "idempotency_key_pkey" PRIMARY KEY ("principal","key")
);

-- CreateIndex
CREATE UNIQUE INDEX "app_user_email_key" ON "app_user"("email");

-- CreateIndex
CREATE UNIQUE INDEX "session_token_key" ON "session"("token");

-- CreateIndex
CREATE INDEX "session_user_id_idx" ON "session"("user_id");

-- CreateIndex
CREATE INDEX "account_user_id_idx" ON "account"("user_id");

-- CreateIndex
CREATE INDEX "verification_identifier_idx" ON "verification"("identifier");

-- CreateIndex
CREATE INDEX "member_user_id_idx" ON "member"("user_id");

-- CreateIndex
CREATE UNIQUE INDEX "member_company_id_user_id_key" ON "member"("company_id", "user_id");

-- CreateIndex
CREATE UNIQUE INDEX "invitation_token_hash_key" ON "invitation"("token_hash");

-- CreateIndex
CREATE UNIQUE INDEX "api_key_token_hash_key" ON "api_key"("token_hash");

-- CreateIndex
CREATE INDEX "project_company_id_created_at_id_idx" ON "project"("company_id", "created_at" DESC, "id");

-- CreateIndex
CREATE INDEX "location_company_id_project_id_position_idx" ON "location"("company_id", "project_id", "position");

-- CreateIndex
CREATE INDEX "photo_company_id_project_id_received_at_id_idx" ON "photo"("company_id", "project_id", "received_at" DESC, "id");

-- CreateIndex
CREATE UNIQUE INDEX "photo_company_id_project_id_sha256_key" ON "photo"("company_id", "project_id", "sha256");

-- CreateIndex
CREATE INDEX "finding_company_id_project_id_created_at_id_idx" ON "finding"("company_id", "project_id", "created_at" DESC, "id");

-- CreateIndex
CREATE INDEX "finding_company_id_location_id_idx" ON "finding"("company_id", "location_id");

-- CreateIndex
CREATE UNIQUE INDEX "finding_company_id_project_id_number_key" ON "finding"("company_id", "project_id", "number");

-- CreateIndex
CREATE INDEX "finding_photo_company_id_photo_id_idx" ON "finding_photo"("company_id", "photo_id");

-- CreateIndex
CREATE UNIQUE INDEX "judgment_company_id_finding_id_seq_key" ON "judgment"("company_id", "finding_id", "seq");

-- CreateIndex
CREATE UNIQUE INDEX "change_order_company_id_project_id_number_key" ON "change_order"("company_id", "project_id", "number");

-- CreateIndex
CREATE INDEX "change_order_finding_company_id_finding_id_idx" ON "change_order_finding"("company_id", "finding_id");

-- CreateIndex
CREATE UNIQUE INDEX "client_link_token_hash_key" ON "client_link"("token_hash");

-- CreateIndex
CREATE INDEX "client_link_company_id_change_order_id_version_idx" ON "client_link"("company_id", "change_order_id", "version");

-- CreateIndex
CREATE INDEX "question_company_id_change_order_id_asked_at_idx" ON "question"("company_id", "change_order_id", "asked_at");

-- CreateIndex
CREATE INDEX "event_company_id_subject_id_idx" ON "event"("company_id", "subject_id");

-- CreateIndex
CREATE INDEX "idempotency_key_created_at_idx" ON "idempotency_key"("created_at");

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "app_user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "account" ADD CONSTRAINT "account_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "app_user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "location" ADD CONSTRAINT "location_company_id_project_id_fkey" FOREIGN KEY ("company_id", "project_id") REFERENCES "project"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "location" ADD CONSTRAINT "location_company_id_parent_id_fkey" FOREIGN KEY ("company_id", "parent_id") REFERENCES "location"("company_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_company_id_project_id_fkey" FOREIGN KEY ("company_id", "project_id") REFERENCES "project"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding" ADD CONSTRAINT "finding_company_id_project_id_fkey" FOREIGN KEY ("company_id", "project_id") REFERENCES "project"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding" ADD CONSTRAINT "finding_company_id_location_id_fkey" FOREIGN KEY ("company_id", "location_id") REFERENCES "location"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding_photo" ADD CONSTRAINT "finding_photo_company_id_finding_id_fkey" FOREIGN KEY ("company_id", "finding_id") REFERENCES "finding"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding_photo" ADD CONSTRAINT "finding_photo_company_id_photo_id_fkey" FOREIGN KEY ("company_id", "photo_id") REFERENCES "photo"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "judgment" ADD CONSTRAINT "judgment_company_id_finding_id_fkey" FOREIGN KEY ("company_id", "finding_id") REFERENCES "finding"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "change_order" ADD CONSTRAINT "change_order_company_id_project_id_fkey" FOREIGN KEY ("company_id", "project_id") REFERENCES "project"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "change_order_finding" ADD CONSTRAINT "change_order_finding_company_id_change_order_id_fkey" FOREIGN KEY ("company_id", "change_order_id") REFERENCES "change_order"("company_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "change_order_finding" ADD CONSTRAINT "change_order_finding_company_id_finding_id_fkey" FOREIGN KEY ("company_id", "finding_id") REFERENCES "finding"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "change_order_version" ADD CONSTRAINT "change_order_version_company_id_change_order_id_fkey" FOREIGN KEY ("company_id", "change_order_id") REFERENCES "change_order"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "client_link" ADD CONSTRAINT "client_link_company_id_change_order_id_version_fkey" FOREIGN KEY ("company_id", "change_order_id", "version") REFERENCES "change_order_version"("company_id", "change_order_id", "version") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "decision" ADD CONSTRAINT "decision_company_id_change_order_id_version_fkey" FOREIGN KEY ("company_id", "change_order_id", "version") REFERENCES "change_order_version"("company_id", "change_order_id", "version") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "question" ADD CONSTRAINT "question_company_id_change_order_id_fkey" FOREIGN KEY ("company_id", "change_order_id") REFERENCES "change_order"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
