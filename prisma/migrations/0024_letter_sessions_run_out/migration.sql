-- Sessions of letters that ran out may be cleared away, and no others.
GRANT DELETE ON "client_session" TO underlath_app;
CREATE POLICY only_run_out ON "client_session" AS RESTRICTIVE FOR DELETE TO underlath_app USING (expires_at < now());
