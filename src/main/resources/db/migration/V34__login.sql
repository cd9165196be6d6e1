-- By what a provider of log-ins knows the person of an account; null where nobody logs in so.
alter table account add column login varchar(255);
create unique index account_by_login on account (login);
