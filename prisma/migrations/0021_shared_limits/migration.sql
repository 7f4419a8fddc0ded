-- How often something was tried, counted for all server processes together. Keys are hashes: no address, no e-mail.
-- Unlogged: a counter is not worth a flush, and after a crash of the database counting begins anew.

-- CreateTable
CREATE UNLOGGED TABLE "rate_limit" (
    "key" VARCHAR(255) NOT NULL,
    "points" INTEGER NOT NULL DEFAULT 0,
    "expire" BIGINT,

    CONSTRAINT "rate_limit_pkey" PRIMARY KEY ("key")
);

GRANT SELECT, INSERT, UPDATE, DELETE ON "rate_limit" TO underlath_app;
