-- A backup names the version of the tables it holds, and is written by the role the server works as.
GRANT SELECT ON flyway_schema_history TO ${runtimeRole};
