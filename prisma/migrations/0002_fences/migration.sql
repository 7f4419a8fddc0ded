-- Who may see and change what, in the database itself.
-- The application works as underlath_app: not an owner, no BYPASSRLS. Each transaction says for whom it works:
--   app.company_id  the company whose rows it may touch
--   app.user_id     the person signed in (to find their memberships before a company is known)
--   app.token_hash  the hash of a secret just presented (to find the one link, invitation or key it opens)
--   app.principal   whose repeated requests are looked up
-- A setting that was never made reads as '' or NULL; nullif makes both see nothing.

DO $$
BEGIN
  IF NOT EXISTS (SELECT 1 FROM pg_roles WHERE rolname = 'underlath_app') THEN
    CREATE ROLE underlath_app NOLOGIN NOBYPASSRLS;
  END IF;
  -- Two servers may start at once on one cluster; a role is cluster-wide and the other may have won.
EXCEPTION WHEN duplicate_object OR unique_violation THEN NULL;
END $$;

DO $$
BEGIN
  IF NOT pg_has_role(current_user, 'underlath_app', 'MEMBER') THEN
    EXECUTE format('GRANT underlath_app TO %I', current_user);
  END IF;
END $$;

GRANT USAGE ON SCHEMA public TO underlath_app;

CREATE FUNCTION app_company() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE
  AS $$ SELECT nullif(current_setting('app.company_id', true), '')::uuid $$;
CREATE FUNCTION app_user_id() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE
  AS $$ SELECT nullif(current_setting('app.user_id', true), '')::uuid $$;
CREATE FUNCTION app_token_hash() RETURNS text LANGUAGE sql STABLE PARALLEL SAFE
  AS $$ SELECT nullif(current_setting('app.token_hash', true), '') $$;
CREATE FUNCTION app_principal() RETURNS text LANGUAGE sql STABLE PARALLEL SAFE
  AS $$ SELECT nullif(current_setting('app.principal', true), '') $$;

-- Every table with a company: fenced by it; the owner role (migrations, backup, verifying) sees all.
DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['member','invitation','api_key','project','location','photo','finding','finding_photo','judgment','cost_book',
    'change_order','change_order_finding','change_order_version','client_link','decision','question','event','record_head','mail']
  LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY company_fence ON %I TO underlath_app USING (company_id = app_company()) WITH CHECK (company_id = app_company())', t);
    EXECUTE format('CREATE POLICY keeper ON %I TO %I USING (true) WITH CHECK (true)', t, current_user);
    EXECUTE format('GRANT SELECT, INSERT, UPDATE, DELETE ON %I TO underlath_app', t);
  END LOOP;
END $$;

ALTER TABLE company ENABLE ROW LEVEL SECURITY;
ALTER TABLE company FORCE ROW LEVEL SECURITY;
CREATE POLICY company_fence ON company TO underlath_app USING (id = app_company()) WITH CHECK (id = app_company());
DO $$ BEGIN EXECUTE format('CREATE POLICY keeper ON company TO %I USING (true) WITH CHECK (true)', current_user); END $$;
GRANT SELECT, INSERT, UPDATE ON company TO underlath_app;

-- Found by who they belong to, before the company is known.
CREATE POLICY own_memberships ON member FOR SELECT TO underlath_app USING (user_id = app_user_id());
CREATE POLICY by_secret ON invitation FOR SELECT TO underlath_app USING (token_hash = app_token_hash());
CREATE POLICY by_secret ON api_key FOR SELECT TO underlath_app USING (token_hash = app_token_hash());
CREATE POLICY by_secret ON client_link FOR SELECT TO underlath_app USING (token_hash = app_token_hash());

ALTER TABLE idempotency_key ENABLE ROW LEVEL SECURITY;
ALTER TABLE idempotency_key FORCE ROW LEVEL SECURITY;
CREATE POLICY own_repeats ON idempotency_key TO underlath_app USING (principal = app_principal()) WITH CHECK (principal = app_principal());
DO $$ BEGIN EXECUTE format('CREATE POLICY keeper ON idempotency_key TO %I USING (true) WITH CHECK (true)', current_user); END $$;
GRANT SELECT, INSERT, UPDATE, DELETE ON idempotency_key TO underlath_app;

-- Written once: judgments, cost books, sent versions, decisions, events. Not even the owner changes them.
CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'rows of % are written once and never changed or removed', TG_TABLE_NAME USING ERRCODE = 'insufficient_privilege';
END $$;

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['judgment','cost_book','change_order_version','decision','event']
  LOOP
    EXECUTE format('REVOKE UPDATE, DELETE ON %I FROM underlath_app', t);
    EXECUTE format('CREATE TRIGGER written_once BEFORE UPDATE OR DELETE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()', t);
    EXECUTE format('CREATE TRIGGER never_emptied BEFORE TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', t);
  END LOOP;
END $$;

-- Findings and photos are withdrawn or kept, never removed; a chain's head only moves on.
REVOKE DELETE ON finding, photo, record_head, project, question, client_link FROM underlath_app;
