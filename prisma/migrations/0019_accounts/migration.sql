-- Accounts people can live with: links by mail, a second factor, passkeys, recovery codes, own devices.
-- These tables are the signing-in person's and belong to no company: like app_user and session they are read by the owner's
-- connections alone, and underlath_app is granted nothing on them.

ALTER TYPE "mail_kind" ADD VALUE 'account-link';
ALTER TYPE "mail_kind" ADD VALUE 'account-told';

-- A session is known by the hash of its token from now on; the tokens in people's cookies stay good.
UPDATE "session" SET "token" = encode(sha256(convert_to("token", 'UTF8')), 'hex');
ALTER TABLE "session" RENAME COLUMN "token" TO "token_hash";
ALTER INDEX "session_token_key" RENAME TO "session_token_hash_key";
ALTER TABLE "session" RENAME COLUMN "updated_at" TO "last_used_at";
ALTER TABLE "session" ALTER COLUMN "last_used_at" SET DEFAULT CURRENT_TIMESTAMP;

-- Whoever is a member already is taken as confirmed, though nobody asked them: they have sent offers from their addresses, and
-- shutting a working firm out of sending in the middle of a job would harm it and its clients. The rule is there for strangers
-- who open a company to mail somebody; they come after this.
UPDATE "app_user" u SET "email_verified" = true WHERE EXISTS (SELECT 1 FROM "member" m WHERE m."user_id" = u."id");

-- Whether a person confirmed their address, for the application, which may not read the table itself.
CREATE FUNCTION email_confirmed(person uuid) RETURNS boolean LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
  AS $$ SELECT coalesce((SELECT u.email_verified FROM app_user u WHERE u.id = person), false) $$;
REVOKE ALL ON FUNCTION email_confirmed(uuid) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION email_confirmed(uuid) TO underlath_app;

-- Was the sign-in library's; nothing was ever kept in it.
DROP TABLE "verification";

-- CreateEnum
CREATE TYPE "account_link_kind" AS ENUM ('confirm-email', 'change-email', 'reset-password');

-- CreateEnum
CREATE TYPE "sign_in_turn_kind" AS ENUM ('second-step', 'passkey-sign-in', 'passkey-add');

-- CreateTable
CREATE TABLE "account_link" (
    "id" UUID NOT NULL,
    "user_id" UUID NOT NULL,
    "kind" "account_link_kind" NOT NULL,
    "token_hash" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "used_at" TIMESTAMPTZ(3),

    CONSTRAINT "account_link_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "one_time_codes" (
    "user_id" UUID NOT NULL,
    "sealed_secret" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "confirmed_at" TIMESTAMPTZ(3),
    "last_step" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "one_time_codes_pkey" PRIMARY KEY ("user_id")
);

-- CreateTable
CREATE TABLE "recovery_code" (
    "user_id" UUID NOT NULL,
    "code_hash" TEXT NOT NULL,
    "used_at" TIMESTAMPTZ(3),

    CONSTRAINT "recovery_code_pkey" PRIMARY KEY ("user_id","code_hash")
);

-- CreateTable
CREATE TABLE "passkey" (
    "id" UUID NOT NULL,
    "user_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "credential_id" TEXT NOT NULL,
    "public_key" BYTEA NOT NULL,
    "counter" BIGINT NOT NULL,
    "transports" TEXT[],
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "last_used_at" TIMESTAMPTZ(3),

    CONSTRAINT "passkey_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "sign_in_turn" (
    "id" UUID NOT NULL,
    "token_hash" TEXT NOT NULL,
    "kind" "sign_in_turn_kind" NOT NULL,
    "user_id" UUID,
    "challenge" TEXT,
    "wrong" INTEGER NOT NULL DEFAULT 0,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "sign_in_turn_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "account_link_token_hash_key" ON "account_link"("token_hash");

-- CreateIndex
CREATE INDEX "account_link_user_id_idx" ON "account_link"("user_id");

-- CreateIndex
CREATE UNIQUE INDEX "passkey_credential_id_key" ON "passkey"("credential_id");

-- CreateIndex
CREATE INDEX "passkey_user_id_idx" ON "passkey"("user_id");

-- CreateIndex
CREATE UNIQUE INDEX "sign_in_turn_token_hash_key" ON "sign_in_turn"("token_hash");

-- CreateIndex
CREATE INDEX "sign_in_turn_user_id_idx" ON "sign_in_turn"("user_id");

-- AddForeignKey
ALTER TABLE "account_link" ADD CONSTRAINT "account_link_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "app_user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "one_time_codes" ADD CONSTRAINT "one_time_codes_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "app_user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "recovery_code" ADD CONSTRAINT "recovery_code_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "app_user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "passkey" ADD CONSTRAINT "passkey_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "app_user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sign_in_turn" ADD CONSTRAINT "sign_in_turn_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "app_user"("id") ON DELETE CASCADE ON UPDATE CASCADE;
