-- What a person changes about their own account, the letter that tells them and the note in the log of people stand or fall
-- together, so the connection of people writes all three: letters about accounts and no others, notes of what people did to
-- their own account and no others, and the name and address of a membership, which follow the person's.
GRANT SELECT, INSERT ON "mail" TO underlath_people;
CREATE POLICY about_accounts ON "mail" TO underlath_people
  USING (kind IN ('account-link', 'account-told')) WITH CHECK (kind IN ('account-link', 'account-told'));

GRANT SELECT, INSERT ON "people_event" TO underlath_people;
CREATE POLICY about_accounts ON "people_event" TO underlath_people
  USING (type ~ '^(sign-in|device|password|email|name|second-factor|passkey|recovery-codes?)\.')
  WITH CHECK (type ~ '^(sign-in|device|password|email|name|second-factor|passkey|recovery-codes?)\.');

GRANT UPDATE ("name", "email", "version") ON "member" TO underlath_people;
CREATE POLICY own_name ON "member" FOR UPDATE TO underlath_people USING (true) WITH CHECK (true);
