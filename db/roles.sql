-- Run once by a superuser on a server of your own: the two roles and the database Scrubline expects.
-- Choose your own passwords; the owner's goes to spring.flyway.password, the other to spring.datasource.password.
\getenv owner_password SCRUBLINE_OWNER_PASSWORD
\getenv app_password SCRUBLINE_APP_PASSWORD
CREATE ROLE scrubline_owner LOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOBYPASSRLS PASSWORD :'owner_password';
CREATE ROLE scrubline_app LOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOBYPASSRLS PASSWORD :'app_password';
CREATE DATABASE scrubline OWNER scrubline_owner;
REVOKE ALL ON DATABASE scrubline FROM PUBLIC;
GRANT CONNECT ON DATABASE scrubline TO scrubline_app;
