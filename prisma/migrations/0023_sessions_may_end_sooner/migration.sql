-- The owner of the tables may let a session of a letter run out sooner; the application is granted its end alone.
DROP TRIGGER mostly_stays ON "client_session";
CREATE TRIGGER mostly_stays BEFORE UPDATE ON "client_session" FOR EACH ROW
  EXECUTE FUNCTION refuse_other_columns('expires_at', 'ended_at');
