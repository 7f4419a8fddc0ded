-- A role for each kind of connection, with the rights that kind of work takes and no more. The program logs in as members of
-- these roles; the owner of the tables is used by migrations and by commands at the terminal.
DO $$
DECLARE r text;
BEGIN
  FOREACH r IN ARRAY ARRAY['underlath_people','underlath_queue']
  LOOP
    BEGIN
      IF NOT EXISTS (SELECT 1 FROM pg_roles WHERE rolname = r) THEN
        EXECUTE format('CREATE ROLE %I NOLOGIN NOBYPASSRLS', r);
      END IF;
      -- Two servers may start at once on one cluster; a role is cluster-wide and the other may have won.
    EXCEPTION WHEN duplicate_object OR unique_violation THEN NULL;
    END;
  END LOOP;
END $$;

-- Who signs in: the tables of people, which belong to no company, and where a person works. A later table of theirs is
-- granted here by its own migration; those that other migrations made before this one are named too.
GRANT USAGE ON SCHEMA public TO underlath_people, underlath_queue;
DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['app_user','session','account','verification','account_link','one_time_codes','recovery_code','passkey','sign_in_turn']
  LOOP
    IF to_regclass(t) IS NOT NULL THEN
      EXECUTE format('GRANT SELECT, INSERT, UPDATE, DELETE ON %I TO underlath_people', t);
    END IF;
  END LOOP;
END $$;
GRANT SELECT ON "member", "company" TO underlath_people;
CREATE POLICY sign_in ON "member" FOR SELECT TO underlath_people USING (true);
CREATE POLICY sign_in ON "company" FOR SELECT TO underlath_people USING (true);

-- Whether the database is as new as the program.
GRANT SELECT ON "_prisma_migrations" TO underlath_app;

-- Members are removed by a mark, keys and invitations revoked, change orders set aside: no row of them goes.
REVOKE DELETE ON "member", "invitation", "api_key", "change_order" FROM underlath_app;

-- A record only goes on.
CREATE FUNCTION refuse_step_back() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW.company_id <> OLD.company_id OR NEW.project_id <> OLD.project_id OR NEW.seq < OLD.seq
    OR (NEW.seq = OLD.seq AND NEW.hash <> OLD.hash) THEN
    RAISE EXCEPTION 'the head of a record only moves on' USING ERRCODE = 'insufficient_privilege';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER moves_on BEFORE UPDATE ON "record_head" FOR EACH ROW EXECUTE FUNCTION refuse_step_back();

-- Columns that may change; all others of the row stay as they were written.
CREATE FUNCTION refuse_other_columns() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF (to_jsonb(NEW) - TG_ARGV) <> (to_jsonb(OLD) - TG_ARGV) THEN
    RAISE EXCEPTION 'of % only % may change', TG_TABLE_NAME, array_to_string(TG_ARGV, ', ') USING ERRCODE = 'insufficient_privilege';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER mostly_stays BEFORE UPDATE ON "question" FOR EACH ROW
  EXECUTE FUNCTION refuse_other_columns('answer', 'answered_at', 'answered_by_id');
CREATE TRIGGER mostly_stays BEFORE UPDATE ON "contract_entry" FOR EACH ROW
  EXECUTE FUNCTION refuse_other_columns('taken_back_at', 'taken_back_why');
CREATE TRIGGER mostly_stays BEFORE UPDATE ON "actual" FOR EACH ROW
  EXECUTE FUNCTION refuse_other_columns('taken_back_at', 'taken_back_why');
CREATE TRIGGER mostly_stays BEFORE UPDATE ON "client_link" FOR EACH ROW
  EXECUTE FUNCTION refuse_other_columns('expires_at', 'revoked_at');
CREATE TRIGGER mostly_stays BEFORE UPDATE ON "client_session" FOR EACH ROW EXECUTE FUNCTION refuse_other_columns('ended_at');

-- What was given once is not given again: an answer, the end of a link, of a session, of an entry.
CREATE FUNCTION refuse_second_time() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE c text;
BEGIN
  FOREACH c IN ARRAY TG_ARGV
  LOOP
    IF to_jsonb(OLD) ->> c IS NOT NULL AND to_jsonb(NEW) ->> c IS DISTINCT FROM to_jsonb(OLD) ->> c THEN
      RAISE EXCEPTION '% of % is given once', c, TG_TABLE_NAME USING ERRCODE = 'insufficient_privilege';
    END IF;
  END LOOP;
  RETURN NEW;
END $$;
CREATE TRIGGER given_once BEFORE UPDATE ON "question" FOR EACH ROW
  EXECUTE FUNCTION refuse_second_time('answer', 'answered_at', 'answered_by_id');
CREATE TRIGGER given_once BEFORE UPDATE ON "contract_entry" FOR EACH ROW
  EXECUTE FUNCTION refuse_second_time('taken_back_at', 'taken_back_why');
CREATE TRIGGER given_once BEFORE UPDATE ON "actual" FOR EACH ROW
  EXECUTE FUNCTION refuse_second_time('taken_back_at', 'taken_back_why');
CREATE TRIGGER given_once BEFORE UPDATE ON "client_link" FOR EACH ROW EXECUTE FUNCTION refuse_second_time('revoked_at');
CREATE TRIGGER given_once BEFORE UPDATE ON "client_session" FOR EACH ROW EXECUTE FUNCTION refuse_second_time('ended_at');
CREATE TRIGGER given_once BEFORE UPDATE ON "invitation" FOR EACH ROW
  EXECUTE FUNCTION refuse_second_time('accepted_at', 'revoked_at', 'token_hash', 'role', 'email');
CREATE TRIGGER given_once BEFORE UPDATE ON "api_key" FOR EACH ROW EXECUTE FUNCTION refuse_second_time('revoked_at', 'token_hash');
-- A photo may be described and placed anew; which bytes it is stays.
CREATE TRIGGER given_once BEFORE UPDATE ON "photo" FOR EACH ROW
  EXECUTE FUNCTION refuse_second_time('sha256', 'file_key', 'byte_count', 'media_type', 'received_at', 'uploaded_by_id', 'project_id');
